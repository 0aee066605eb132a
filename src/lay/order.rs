//! In which order and pose parts are laid, and how that is varied.

use rand_pcg::Pcg32;
use rand_pcg::rand_core::Rng as _;

/// One way to lay: which part comes first, in which pose, and from which side each is fitted in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Order {
    /// The parts, the first laid first.
    pub(super) parts: Vec<usize>,
    /// The pose of each part.
    pub(super) poses: Vec<usize>,
    /// Where across the cloth each part is fitted in.
    pub(super) sides: Vec<Side>,
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
    const ALL: [Self; 4] = [Self::First, Self::Last, Self::FirstHalf, Self::LastHalf];

    fn any(chance: &mut Chance) -> Self {
        Self::ALL[chance.below(Self::ALL.len())]
    }

    /// Whether places are tried from the last.
    pub(super) fn tries_last_first(self) -> bool {
        matches!(self, Self::Last | Self::LastHalf)
    }

    /// The places it leaves of those from `low` to `high`.
    pub(super) fn of(self, [low, high]: [i32; 2]) -> [i32; 2] {
        let middle = low + (high - low) / 2;
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
    /// The same with one thing changed; `choices` tells how many poses each part has.
    pub(super) fn varied(&self, choices: &[usize], chance: &mut Chance) -> Self {
        let mut next = self.clone();
        let count = self.parts.len();
        // Tried until it changes something: one part in one pose has nothing but its side.
        for _ in 0..8 {
            match chance.below(4) {
                0 => next.parts.swap(chance.below(count), chance.below(count)),
                1 => {
                    let part = next.parts.remove(chance.below(count));
                    next.parts.insert(chance.below(count), part);
                }
                2 => {
                    let part = chance.below(count);
                    next.poses[part] = chance.below(choices[part]);
                }
                _ => {
                    let part = chance.below(count);
                    next.sides[part] = Side::any(chance);
                }
            }
            if next != *self {
                break;
            }
        }
        next
    }

    /// The same parts in any order and pose.
    pub(super) fn shuffled(&self, choices: &[usize], chance: &mut Chance) -> Self {
        let mut next = self.clone();
        for last in (1..next.parts.len()).rev() {
            next.parts.swap(last, chance.below(last + 1));
        }
        for (part, &poses) in choices.iter().enumerate() {
            next.poses[part] = chance.below(poses);
            next.sides[part] = Side::any(chance);
        }
        next
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
        let mut order = Order {
            parts: (0..6).collect(),
            poses: vec![0; 6],
            sides: vec![Side::First; 6],
        };
        for _ in 0..200 {
            order = order.varied(&[1, 2, 4, 1, 2, 4], &mut chance);
            let mut parts = order.parts.clone();
            parts.sort_unstable();
            assert_eq!(parts, [0, 1, 2, 3, 4, 5]);
            assert!(
                order
                    .poses
                    .iter()
                    .zip([1, 2, 4, 1, 2, 4])
                    .all(|(p, n)| *p < n)
            );
        }
    }
}
