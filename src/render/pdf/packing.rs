//! Placing parts so that few pages are printed: a search over orders, half turns and places.
#![expect(
    clippy::indexing_slicing,
    reason = "a way, a part and a page are numbers counted in this search; a row of a place lies on the board that the place was found on"
)]

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use kurbo::{Rect, Vec2};

use crate::geometry::counted;

use super::coverage::Coverage;
use super::page_shape::PageShape;
use super::raster::{Lattice, Pages, Raster};
use crate::drawing::{Placement, SheetPart};

/// The most cells of the lattice in a row: the bits of a number, with room at the end for the gap.
const MOST_ACROSS: usize = 126;

/// The most rows of pages.
const MOST_ROWS: usize = 32;

/// The width in mm that is looked over if the parts do not need more.
const USUAL_WIDTH: f64 = 1000.0;

/// How many orders are tried; fewer where there are many parts.
const ORDERS: usize = 12;

/// How often each part is taken up and put down where it is better.
const ROUNDS: usize = 2;

/// Pages more than its fewest that a place of a part may need.
const MORE: u32 = 2;

/// Places of a part by the pages they need.
struct Way {
    turned: bool,
    raster: Raster,
    choices: Vec<Choice>,
}

struct Choice {
    pages: Pages,
    places: Vec<(usize, usize)>,
}

/// Where a part lies: which way, and the cell of the lattice at its corner.
#[derive(Clone, Copy)]
struct Spot {
    way: usize,
    choice: usize,
    page: (usize, usize),
    x: usize,
    y: usize,
}

/// What is on the pages so far.
struct Board {
    used: [u32; MOST_ROWS],
    /// The cells that are taken, or too near to what takes them.
    taken: Vec<u128>,
}

/// What counts, the first first.
type Cost = (u32, u32, usize);

/// How many columns bits reach over.
fn wide(bits: u32) -> u32 {
    32 - bits.leading_zeros()
}

/// The search for one way round of the pages.
struct Packing {
    lattice: Lattice,
    columns: usize,
    ways: Vec<Vec<Way>>,
}

/// Places for parts on pages that begin at the origin, so that few of them are needed; none if
/// the parts are too large or too many to be looked over. At least a cell of the lattice is free
/// between any two parts. The same parts always give the same places.
pub(super) fn pack(
    parts: &[SheetPart],
    inks: &[Coverage],
    shape: &PageShape,
) -> Option<Vec<Placement>> {
    let widest = parts
        .iter()
        .map(|part| part.drawing.bounds().width())
        .fold(0.0, f64::max);
    let wide = widest.max(USUAL_WIDTH);
    let columns = counted((wide / shape.pitch.width).ceil());
    let across = MOST_ACROSS
        .checked_div(columns)
        .unwrap_or(MOST_ACROSS)
        .min(24);
    if across < 6 || parts.len() > 24 {
        return None;
    }
    let lattice = Lattice::new(shape, across);
    let mut ways = Vec::new();
    for (part, ink) in parts.iter().zip(inks) {
        let turns: &[bool] = if part.turns { &[false, true] } else { &[false] };
        let all: Option<Vec<Way>> = turns
            .iter()
            .map(|&turned| Way::new(part, ink, turned, &lattice))
            .collect();
        ways.push(all?);
    }
    let packing = Packing {
        lattice,
        columns,
        ways,
    };
    let mut spots = packing.best(parts)?;
    // Begin with the first page that is used.
    let first = |of: fn(&Spot) -> usize| spots.iter().map(of).min().unwrap_or(0);
    let (left, top) = (first(|s| s.page.1), first(|s| s.page.0));
    for spot in &mut spots {
        spot.x -= left * lattice.across;
        spot.y -= top * lattice.down;
    }
    let placements = parts.iter().zip(&spots).zip(&packing.ways);
    Some(
        placements
            .map(|((part, spot), ways)| {
                let turned = ways[spot.way].turned;
                let at = Vec2::new(
                    spot.x as f64 * lattice.cell.width,
                    spot.y as f64 * lattice.cell.height,
                );
                let corner = bounds_of(part, turned).origin();
                Placement {
                    turned,
                    by: at - corner.to_vec2(),
                }
            })
            .collect(),
    )
}

fn bounds_of(part: &SheetPart, turned: bool) -> Rect {
    let bounds = part.drawing.bounds();
    if turned {
        Rect::new(-bounds.x1, -bounds.y1, -bounds.x0, -bounds.y0)
    } else {
        bounds
    }
}

impl Way {
    fn new(part: &SheetPart, ink: &Coverage, turned: bool, lattice: &Lattice) -> Option<Self> {
        let by = Vec2::ZERO;
        let ink = Coverage::laid(std::slice::from_ref(ink), &[Placement { turned, by }]);
        let raster = Raster::new(&ink, bounds_of(part, turned), lattice)?;
        let mut choices: Vec<Choice> = raster
            .pages(lattice)
            .into_iter()
            .map(|(pages, places)| Choice { pages, places })
            .collect();
        let fewest = choices.iter().map(Choice::count).min()?;
        choices.retain(|choice| choice.count() <= fewest + MORE);
        Some(Self {
            turned,
            raster,
            choices,
        })
    }
}

impl Choice {
    fn count(&self) -> u32 {
        self.pages.iter().map(|row| row.count_ones()).sum()
    }
}

impl Board {
    fn new(lattice: &Lattice) -> Self {
        Self {
            used: [0; MOST_ROWS],
            taken: vec![0; (MOST_ROWS + 1) * lattice.down],
        }
    }

    /// The pages in use, how many edges of two of them are glued, and the places on the plan.
    fn cost(&self) -> Cost {
        let mut pages = 0;
        let mut joins = 0;
        for (row, bits) in self.used.iter().enumerate() {
            pages += bits.count_ones();
            joins += (bits & (bits >> 1)).count_ones();
            let below = self.used.get(row + 1).copied().unwrap_or(0);
            joins += (bits & below).count_ones();
        }
        (pages, joins, self.rows() * wide(self.all()) as usize)
    }

    /// The columns in use.
    fn all(&self) -> u32 {
        self.used.iter().fold(0, |all, row| all | row)
    }

    fn rows(&self) -> usize {
        let last = self.used.iter().rposition(|row| *row != 0);
        last.map_or(0, |row| row + 1)
    }

    fn is_free(&self, hull: &[u128], x: usize, y: usize) -> bool {
        self.taken.get(y..y + hull.len()).is_some_and(|rows| {
            rows.iter()
                .zip(hull)
                .all(|(row, bits)| row & (bits << x) == 0)
        })
    }

    fn put(&mut self, way: &Way, spot: &Spot) {
        for (row, bits) in way.choices[spot.choice].pages.iter().enumerate() {
            self.used[spot.page.0 + row] |= bits << spot.page.1;
        }
        for (row, bits) in way.raster.hull.iter().enumerate() {
            let bits = bits << spot.x;
            let wide = bits | (bits << 1) | (bits >> 1);
            let at = spot.y + row;
            for row in at.saturating_sub(1)..=at + 1 {
                if let Some(taken) = self.taken.get_mut(row) {
                    *taken |= wide;
                }
            }
        }
    }
}

impl Packing {
    /// The best of several orders, each improved by taking up one part after the other.
    fn best(&self, parts: &[SheetPart]) -> Option<Vec<Spot>> {
        let size = |part: usize| parts[part].drawing.bounds().size();
        let keys: [fn(kurbo::Size) -> f64; 3] = [kurbo::Size::area, |s| s.height, |s| s.width];
        let mut best: Option<(Cost, Vec<Spot>)> = None;
        let mut order: Vec<usize> = (0..parts.len()).collect();
        let mut dice = Dice(7);
        for number in 0..ORDERS.min(1 + 60_usize.checked_div(parts.len()).unwrap_or(60)) {
            match keys.get(number) {
                Some(key) => order.sort_by(|&a, &b| key(size(b)).total_cmp(&key(size(a)))),
                None => dice.shuffle(&mut order),
            }
            let Some(found) = self.in_order(&order) else {
                continue;
            };
            if best.as_ref().is_none_or(|(cost, _)| found.0 < *cost) {
                best = Some(found);
            }
        }
        best.map(|(_, spots)| spots)
    }

    fn in_order(&self, order: &[usize]) -> Option<(Cost, Vec<Spot>)> {
        let mut spots: Vec<Option<Spot>> = vec![None; self.ways.len()];
        let mut board = Board::new(&self.lattice);
        for &part in order {
            let spot = self.place(part, &board)?;
            board.put(&self.ways[part][spot.way], &spot);
            spots[part] = Some(spot);
        }
        let mut cost = board.cost();
        for _ in 0..ROUNDS {
            let before = cost;
            for &part in order {
                let lifted = spots[part].take();
                let mut board = self.board(&spots);
                let spot = self.place(part, &board)?;
                board.put(&self.ways[part][spot.way], &spot);
                let found = board.cost();
                if found < cost {
                    cost = found;
                    spots[part] = Some(spot);
                } else {
                    spots[part] = lifted;
                }
            }
            if cost == before {
                break;
            }
        }
        Some((cost, spots.into_iter().collect::<Option<_>>()?))
    }

    fn board(&self, spots: &[Option<Spot>]) -> Board {
        let mut board = Board::new(&self.lattice);
        for (ways, spot) in self.ways.iter().zip(spots) {
            if let Some(spot) = spot {
                board.put(&ways[spot.way], spot);
            }
        }
        board
    }

    /// The place of a part that needs the fewest new pages, of those the one that keeps the whole
    /// smallest, then the highest and leftmost.
    fn place(&self, part: usize, board: &Board) -> Option<Spot> {
        let ways = &self.ways[part];
        let (rows, columns) = (board.rows(), board.all());
        let mut places = BinaryHeap::new();
        for (number, way) in ways.iter().enumerate() {
            for (choice, Choice { pages, .. }) in way.choices.iter().enumerate() {
                let all = pages.iter().fold(0, |all, row| all | row);
                let across = wide(all) as usize;
                let top = rows.min(MOST_ROWS.saturating_sub(pages.len()));
                for row in 0..=top {
                    for column in 0..=self.columns.saturating_sub(across) {
                        let under = board.used[row..].iter().zip(pages);
                        let new: u32 = under
                            .map(|(used, bits)| ((bits << column) & !used).count_ones())
                            .sum();
                        let high = rows.max(row + pages.len());
                        let area = high * wide(columns | (all << column)) as usize;
                        places.push(Reverse((new, area, row, column, choice, number)));
                    }
                }
            }
        }
        while let Some(Reverse((_, _, row, column, choice, number))) = places.pop() {
            let way = &ways[number];
            for &(across, down) in &way.choices[choice].places {
                let x = column * self.lattice.across + across;
                let y = row * self.lattice.down + down;
                if x + way.raster.columns <= MOST_ACROSS && board.is_free(&way.raster.hull, x, y) {
                    return Some(Spot {
                        way: number,
                        choice,
                        page: (row, column),
                        x,
                        y,
                    });
                }
            }
        }
        None
    }
}

/// Numbers that look thrown and are always the same: a linear congruence.
struct Dice(u64);

impl Dice {
    fn below(&mut self, end: usize) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % end.max(1)
    }

    fn shuffle(&mut self, order: &mut [usize]) {
        for last in (1..order.len()).rev() {
            let other = self.below(last + 1);
            order.swap(last, other);
        }
    }
}
