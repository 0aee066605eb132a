//! Fitting a block to a wearer.

use super::aim::{Aim, Aimed, aims};
use super::asked::{Asked, pulls};
use super::balance::Balance;
use super::lever::LEVERS;
use super::made::{Made, made};
use super::{FitError, FitSettings};
use crate::alterations::{Account, Chain, Request};
use crate::draft::{DraftOptions, Figure, draft_figure};
use crate::measurements::{Body, Measurement};
use crate::piece::{MeasureKind, MeasureUnit, Pattern};
use crate::units::Unit;
use nalgebra::{DMatrix, DVector};

/// One step of a fitting.
///
/// ```
/// use blockwright::fit::FitStep;
/// fn asked_most(step: &FitStep) -> Option<&str> {
///     step.asked.first().map(|asked| asked.measurement.name())
/// }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct FitStep {
    /// The step, as a job writes it.
    pub request: Request,
    /// Its amount, in `unit`.
    pub amount: f64,
    /// Unit of the amount.
    pub unit: MeasureUnit,
    /// What it changed and kept.
    pub account: Account,
    /// The measurements that asked for it, those that asked most first; those that asked for the
    /// contrary have the other sign.
    pub asked: Vec<Asked>,
}

impl FitStep {
    /// Two measurements that contradict each other on this step: the one that asked for it, and
    /// one that asked for the contrary by two thirds as much or more.
    ///
    /// ```
    /// use blockwright::fit::FitStep;
    /// fn doubt(step: &FitStep) -> bool { step.contradiction().is_some() }
    /// ```
    #[must_use]
    pub fn contradiction(&self) -> Option<(Asked, Asked)> {
        let sign = self.amount.signum();
        let mut with = self.asked.iter().filter(|asked| asked.amount * sign > 0.0);
        let mut against = self.asked.iter().filter(|asked| asked.amount * sign < 0.0);
        let (most, other) = (with.next()?, against.next()?);
        (3.0 * other.amount.abs() >= 2.0 * most.amount.abs()).then_some((*most, *other))
    }
}

/// Why something was left.
///
/// ```
/// use blockwright::fit::LeftBecause;
/// assert_ne!(LeftBecause::Small, LeftBecause::NoStep);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub enum LeftBecause {
    /// It is less than a fitter bothers with, or what rounded amounts leave.
    Small,
    /// A step that would bring it goes no farther.
    Refused {
        /// The alteration's name.
        alteration: String,
        /// What stands against it, a sentence.
        why: String,
    },
    /// No step of the catalogue changes it without what was right.
    NoStep,
}

/// A measure that does not meet what the wearer needs.
///
/// ```
/// use blockwright::fit::Left;
/// fn is_much(left: &Left) -> bool { left.by.abs() > 3.0 }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Left {
    /// What of the pattern.
    pub what: Aimed,
    /// What it should be less what it is, in its unit.
    pub by: f64,
    /// The measurement of the wearer that it follows from most.
    pub measurement: Option<Measurement>,
    /// Why it was left.
    pub because: LeftBecause,
}

/// A block fitted to a wearer.
///
/// # Guarantees
/// The pattern keeps the rules that every sewable pattern must meet, and every step kept its promises.
/// The steps in their order, as requests of a job, make this pattern.
///
/// ```
/// use blockwright::fit::Fitted;
/// fn steps(fitted: &Fitted) -> usize { fitted.steps.len() }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Fitted {
    /// The altered block.
    pub pattern: Pattern,
    /// What was done, in order.
    pub steps: Vec<FitStep>,
    /// What was left: by a millimetre or half a degree and more, the largest first.
    pub left: Vec<Left>,
}

/// Rounds of solving and making: after the second the amounts hardly change.
const ROUNDS: usize = 5;

/// How many more toiles are fitted, each beginning from the last, while girths or edges are missed by
/// more than a fitter lets pass.
const MORE_TOILES: usize = 2;

/// What a fitter lets pass, in millimetres: at a girth, and at an edge (common practice).
const GIRTH_PASSES: f64 = 1.0;
const EDGE_PASSES: f64 = 3.0;

/// The share of the misses that another toile may leave to be worth its steps.
const WORTH: f64 = 0.8;

/// What a squared millimetre of a step costs beside a squared millimetre of a miss.
const PRICE: f64 = 4e-4;

/// How near a measure may be missed to spare a step, in millimetres, where amounts are exact.
const NEAR: f64 = 0.25;

/// Largest amount of any lever, in millimetres or degrees: beyond it the block is the wrong
/// beginning.
const MOST: f64 = 200.0;

/// Smaller misses are not worth a line, in millimetres or degrees.
const LEAST_LEFT: f64 = 1.0;

/// Fits a block to a wearer.
///
/// `block` is the pattern as it stands, made for the body `own` with these draft options (or a
/// block of one's own that was perfected on that body); `unit` is the one in which errors give
/// measurements.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::fit::{FitSettings, fit};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::piece::Measure;
/// use blockwright::units::Unit;
/// let body = |waist| Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, waist), (Measurement::HipGirth, 1000.0),
/// ]);
/// let (size, wearer) = (body(760.0)?, body(784.0)?);
/// let options = DraftOptions::of(Block::Dress);
/// let block = draft(&size, &options)?;
/// let fitted = fit(&block, &options, (&size, &wearer), Unit::Cm, &FitSettings::default())?;
/// assert!(fitted.steps.iter().any(|step| step.request.name() == "waist_girth"));
/// let waist = fitted.pattern.measured(&Measure::girth("waist")).ok_or("a dress has a waist")?;
/// let hers = draft(&wearer, &options)?.measured(&Measure::girth("waist"));
/// assert!(hers.is_some_and(|hers| (hers - waist).abs() < 4.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`FitError`] when the block can be drafted for one of both bodies not at all, or has nothing in
/// common with a draft.
pub fn fit(
    block: &Pattern,
    options: &DraftOptions,
    (own, wearer): (&Body, &Body),
    unit: Unit,
    settings: &FitSettings,
) -> Result<Fitted, FitError> {
    let drafted = |figure: &Figure, whose: &'static str| {
        draft_figure(figure, options).map_err(|source| FitError::Draft {
            whose,
            source,
            unit,
        })
    };
    let figures = (Figure::from(own), Figure::from(wearer));
    let own_draft = drafted(&figures.0, "the body that the block is made for")?;
    let hers = drafted(&figures.1, "the wearer")?;
    let aims = aims(block, &own_draft, &hers);
    if aims.is_empty() {
        return Err(FitError::NothingShared {
            block: block.block().to_owned(),
        });
    }
    let block = Chain::of(block.clone());
    let mut work = Work::new(&block, &aims, settings);
    let mut result = work.go();
    for _ in 0..MORE_TOILES {
        let left = rest(&aims, &result.chain.pattern).norm_squared();
        if !work.asks_for_another(&result.chain.pattern) {
            break;
        }
        let mut again = Work::new(&result.chain, &aims, settings);
        let more = again.go();
        if rest(&aims, &more.chain.pattern).norm_squared() > WORTH * left {
            break;
        }
        result = result.followed_by(more);
    }
    let pulls = pulls(&aims, (&figures.0, &own_draft), &figures.1, options);
    Ok(work.report(result, &pulls))
}

/// The fitting while it is worked out.
struct Work<'a> {
    block: &'a Chain,
    aims: &'a [Aim],
    settings: &'a FitSettings,
    balance: Balance,
}

impl<'a> Work<'a> {
    fn new(block: &'a Chain, aims: &'a [Aim], settings: &'a FitSettings) -> Self {
        let columns = columns(block, aims);
        let can = |column: &Option<Vec<f64>>| column.is_some();
        let balance = Balance {
            used: columns.iter().map(can).collect(),
            columns: matrix(&columns, aims.len()),
            wanted: rest(aims, &block.pattern),
            costs: LEVERS
                .iter()
                .map(|l| PRICE * l.dislike * l.dislike)
                .collect(),
            bounds: vec![(-MOST, MOST); LEVERS.len()],
        };
        Self {
            block,
            aims,
            settings,
            balance,
        }
    }

    /// Solves and makes, several times: what a step does to the altered block is a little different
    /// from what it did to the block.
    fn go(&mut self) -> Made {
        self.balance.spare(NEAR + 0.5 * self.settings.least_length);
        let mut best: Option<(f64, Made)> = None;
        for round in 0..ROUNDS {
            let amounts = self.worth_while();
            let result = made(self.block, amounts.as_slice(), self.settings);
            let rest = rest(self.aims, &result.chain.pattern);
            // Where a lever got no farther, the others are to make up for it.
            let ends = self.balance.bounds.iter_mut().zip(result.refused.iter());
            let ways = amounts.iter().zip(&result.reached);
            for ((ends, refused), (asked, reached)) in ends.zip(ways) {
                if refused.is_some() && asked > reached {
                    ends.1 = ends.1.min(*reached);
                } else if refused.is_some() {
                    ends.0 = ends.0.max(*reached);
                }
            }
            let reached = DVector::from_column_slice(&result.reached);
            if round == 0 {
                put(
                    &columns(&result.chain, self.aims),
                    &mut self.balance.columns,
                );
            }
            // As if every lever went straight on from where it is.
            self.balance.wanted = &rest + &self.balance.columns * &reached;
            let score = rest.norm_squared();
            let better = best.as_ref().is_none_or(|(least, _)| score < 0.999 * least);
            if better {
                best = Some((score, result));
            } else {
                break;
            }
        }
        best.map_or_else(|| made(self.block, &[], self.settings), |(_, made)| made)
    }

    /// The amounts, without those that no fitter would bother with.
    fn worth_while(&mut self) -> DVector<f64> {
        loop {
            let amounts = self.balance.amounts();
            let small = LEVERS.iter().zip(amounts.iter()).enumerate();
            let small = small
                .filter(|(at, _)| self.balance.used.get(*at) == Some(&true))
                .map(|(at, (lever, amount))| (at, amount.abs() / lever.least(self.settings)))
                .filter(|(_, share)| *share < 1.0)
                .min_by(|a, b| a.1.total_cmp(&b.1));
            let Some((at, _)) = small else {
                return amounts;
            };
            if let Some(used) = self.balance.used.get_mut(at) {
                *used = false;
            }
        }
    }

    /// Whether a girth or an edge of a pattern is missed by more than a fitter lets pass.
    fn asks_for_another(&self, pattern: &Pattern) -> bool {
        let least = self.settings.least_length;
        self.aims.iter().any(|aim| {
            let by = aim.wanted - aim.of.on(pattern).unwrap_or(aim.before);
            let Aimed::Measure(measure) = &aim.of else {
                return false;
            };
            match measure.kind() {
                MeasureKind::FinishedGirth { .. } => by.abs() > GIRTH_PASSES.max(least),
                MeasureKind::EdgeLength { .. } => by.abs() > EDGE_PASSES.max(least + 1.0),
                _ => false,
            }
        })
    }

    /// The fitting with its reasons.
    fn report(&self, result: Made, pulls: &[(Measurement, Vec<f64>)]) -> Fitted {
        let mut free = self.balance.clone();
        free.bounds = vec![(-10.0 * MOST, 10.0 * MOST); LEVERS.len()];
        let shares: Vec<(Measurement, DVector<f64>)> = pulls
            .iter()
            .map(|(measurement, pull)| {
                free.wanted = DVector::from_column_slice(pull);
                (*measurement, free.amounts())
            })
            .collect();
        let left = self.left(&result, pulls);
        let steps = result.steps.into_iter().map(|step| {
            let whole = result
                .reached
                .get(step.lever)
                .copied()
                .unwrap_or(step.amount);
            let part = if whole == 0.0 {
                1.0
            } else {
                step.amount / whole
            };
            let mut asked: Vec<Asked> = shares
                .iter()
                .filter_map(|(measurement, amounts)| {
                    let amount = part * amounts.get(step.lever)?;
                    let counts = amount.abs() >= 0.1 * step.amount.abs();
                    counts.then_some(Asked {
                        measurement: *measurement,
                        amount,
                    })
                })
                .collect();
            asked.sort_by(|a, b| b.amount.abs().total_cmp(&a.amount.abs()));
            FitStep {
                amount: step.amount,
                unit: step.account.unit,
                request: step.request,
                account: step.account,
                asked,
            }
        });
        Fitted {
            steps: steps.collect(),
            pattern: result.chain.pattern,
            left,
        }
    }

    /// What is left of the measures that count.
    fn left(&self, result: &Made, pulls: &[(Measurement, Vec<f64>)]) -> Vec<Left> {
        let mut left: Vec<Left> = Vec::new();
        for (row, aim) in self.aims.iter().enumerate() {
            let now = aim.of.on(&result.chain.pattern).unwrap_or(aim.before);
            let by = aim.wanted - now;
            let least = match aim.of.unit() {
                MeasureUnit::Degrees => 0.5 * LEAST_LEFT,
                MeasureUnit::Millimetres => LEAST_LEFT,
            };
            if by.abs() < least {
                continue;
            }
            let pull = |of: &(Measurement, Vec<f64>)| of.1.get(row).map_or(0.0, |p| p.abs());
            let most = pulls.iter().max_by(|a, b| pull(a).total_cmp(&pull(b)));
            left.push(Left {
                what: aim.of.clone(),
                by,
                measurement: most.filter(|of| pull(of) > 0.0).map(|of| of.0),
                because: self.because(row, by, result),
            });
        }
        left.sort_by(|a, b| b.by.abs().total_cmp(&a.by.abs()));
        left
    }

    fn because(&self, row: usize, by: f64, result: &Made) -> LeftBecause {
        let moves = |at: usize| self.balance.columns.get((row, at)).map_or(0.0, |c| c.abs());
        let refused = result.refused.iter().enumerate();
        let refused = refused
            .filter_map(|(at, why)| Some((at, why.as_ref()?)))
            .filter(|(at, _)| moves(*at) > 0.1)
            .max_by(|a, b| moves(a.0).total_cmp(&moves(b.0)));
        if let Some((at, why)) = refused {
            return LeftBecause::Refused {
                alteration: LEVERS.get(at).map_or("", |lever| lever.name).to_owned(),
                why: why.clone(),
            };
        }
        let small = self.settings.least_length + self.settings.round_length;
        if by.abs() <= small {
            LeftBecause::Small
        } else {
            LeftBecause::NoStep
        }
    }
}

/// What every measure of a pattern still misses, weighted.
fn rest(aims: &[Aim], pattern: &Pattern) -> DVector<f64> {
    DVector::from_iterator(
        aims.len(),
        aims.iter().map(|aim| {
            let now = aim.of.on(pattern).unwrap_or(aim.before);
            aim.weight * (aim.wanted - now)
        }),
    )
}

/// By how much each measure changes for a unit of each lever, weighted; none for a lever that the
/// block does not bear at all.
fn columns(block: &Chain, aims: &[Aim]) -> Vec<Option<Vec<f64>>> {
    LEVERS
        .iter()
        .map(|lever| {
            [1.0, -1.0, 0.25, -0.25].into_iter().find_map(|share| {
                let amount = share * lever.probe;
                let step = lever.step(amount).ok()?.alteration().ok()?;
                let mut done = block.clone();
                done.go_on(step.as_ref()).ok()?;
                let change = |aim: &Aim| {
                    let (was, is) = (aim.of.on(&block.pattern), aim.of.on(&done.pattern));
                    let change = was.zip(is).map_or(0.0, |(was, is)| is - was);
                    aim.weight * change / amount
                };
                Some(aims.iter().map(change).collect())
            })
        })
        .collect()
}

fn matrix(columns: &[Option<Vec<f64>>], rows: usize) -> DMatrix<f64> {
    let mut matrix = DMatrix::zeros(rows, columns.len());
    put(columns, &mut matrix);
    matrix
}

/// Puts the columns that are known into a matrix; the others stay.
fn put(columns: &[Option<Vec<f64>>], matrix: &mut DMatrix<f64>) {
    for (at, column) in columns.iter().enumerate() {
        if let Some(column) = column {
            matrix.set_column(at, &DVector::from_column_slice(column));
        }
    }
}
