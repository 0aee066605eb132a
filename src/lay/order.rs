//! In which order and pose parts are laid, and how that is varied.

use rand_pcg::Pcg32;
use rand_pcg::rand_core::Rng as _;

/// One way to lay: which part comes first, in which pose, and from which side each is fitted in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Order {
    /// The parts, the first laid first.
    pub(super) turns: Vec<Turn>,
}

/// How a part is laid when it is its turn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Turn {
    /// Its place in the list of parts.
    pub(super) part: usize,
    /// The place of its first pose among those of all parts.
    pub(super) first: usize,
    /// How many poses it has, and the one it is laid in.
    pub(super) poses: usize,
    pub(super) pose: usize,
    /// Where across the cloth it is fitted in.
    pub(super) side: Side,
}

/// Where across the cloth a part is fitted in: anywhere or in one half, and of places that serve
/// equally, the first or the last.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    First,
    Last,
    FirstHalf,
    LastHalf,
}

impl Side {
    fn any(chance: &mut Chance) -> Self {
        match chance.below(4) {
            0 => Self::First,
            1 => Self::Last,
            2 => Self::FirstHalf,
            _ => Self::LastHalf,
        }
    }

    /// Whether places are tried from the last.
    pub(super) fn tries_last_first(self) -> bool {
        matches!(self, Self::Last | Self::LastHalf)
    }

    /// The places it leaves of those from `low` to `high`.
    pub(super) fn of(self, [low, high]: [i32; 2]) -> [i32; 2] {
        let middle = low.midpoint(high);
        match self {
            Self::First | Self::Last => [low, high],
            Self::FirstHalf => [low, middle],
            Self::LastHalf => [middle, high],
        }
    }
}

/// Random numbers of a published generator (PCG-XSH-RR 64/32), so that a seed gives the same
/// numbers in every version and on every machine.
#[derive(Debug, Clone)]
pub(super) struct Chance(Pcg32);

impl Chance {
    /// The stream its authors propose.
    const STREAM: u64 = 0x0a02_bdbf_7bb3_c0a7;

    pub(super) fn new(seed: u64) -> Self {
        Self(Pcg32::new(seed, Self::STREAM))
    }

    /// A number below `count`, or 0; biased by less than one in a million for what is laid.
    pub(super) fn below(&mut self, count: usize) -> usize {
        let draw = u64::from(self.0.next_u32());
        let count = u64::try_from(count)
            .unwrap_or(u64::MAX)
            .min(u64::from(u32::MAX));
        usize::try_from((draw * count) >> 32).unwrap_or(0)
    }
}

impl Order {
    /// The same with one thing changed.
    pub(super) fn varied(&self, chance: &mut Chance) -> Self {
        let mut next = self.clone();
        let count = self.turns.len();
        // Tried until it changes something: one part in one pose has nothing but its side.
        for _ in 0..8 {
            match chance.below(4) {
                0 => next.turns.swap(chance.below(count), chance.below(count)),
                1 => {
                    let turn = next.turns.remove(chance.below(count));
                    next.turns.insert(chance.below(count), turn);
                }
                2 => {
                    if let Some(turn) = next.any_turn(chance) {
                        turn.pose = chance.below(turn.poses);
                    }
                }
                _ => {
                    if let Some(turn) = next.any_turn(chance) {
                        turn.side = Side::any(chance);
                    }
                }
            }
            if next != *self {
                break;
            }
        }
        next
    }

    /// The same parts in any order and pose.
    pub(super) fn shuffled(&self, chance: &mut Chance) -> Self {
        let mut next = self.clone();
        for last in (1..next.turns.len()).rev() {
            next.turns.swap(last, chance.below(last + 1));
        }
        let mut by_part: Vec<&mut Turn> = next.turns.iter_mut().collect();
        by_part.sort_unstable_by_key(|turn| turn.part);
        for turn in by_part {
            turn.pose = chance.below(turn.poses);
            turn.side = Side::any(chance);
        }
        next
    }

    /// That of any part; none where there are no parts.
    fn any_turn(&mut self, chance: &mut Chance) -> Option<&mut Turn> {
        let part = chance.below(self.turns.len());
        self.turns.iter_mut().find(|turn| turn.part == part)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_those_of_the_published_generator() {
        // The first outputs of pcg32_srandom_r(42, 54) in the authors' pcg32-demo (value from
        // memory of its printed output).
        let mut pcg = Pcg32::new(42, 54);
        assert_eq!(pcg.next_u32(), 0xa15c_02b7);
        assert_eq!(pcg.next_u32(), 0x7b47_f409);
    }

    #[test]
    fn every_change_keeps_each_part_once() {
        let mut chance = Chance::new(7);
        let turns = [1, 2, 4, 1, 2, 4].into_iter().enumerate();
        let turns = turns.map(|(part, poses)| Turn {
            part,
            first: 0,
            poses,
            pose: 0,
            side: Side::First,
        });
        let mut order = Order {
            turns: turns.collect(),
        };
        for round in 0..200 {
            order = if round % 20 == 19 {
                order.shuffled(&mut chance)
            } else {
                order.varied(&mut chance)
            };
            let mut parts: Vec<usize> = order.turns.iter().map(|turn| turn.part).collect();
            parts.sort_unstable();
            assert_eq!(parts, [0, 1, 2, 3, 4, 5]);
            assert!(order.turns.iter().all(|turn| turn.pose < turn.poses));
        }
    }
}
