//! Figures about many bodies, printed beside pass and fail.

use super::survey::tell;
use std::fmt::{self, Display};

/// What can be said of many values of one thing.
#[derive(Debug, Clone, PartialEq)]
pub struct Statistics {
    sorted: Vec<f64>,
    pub mean: f64,
    /// The standard deviation of a sample.
    pub spread: f64,
}

impl Statistics {
    /// # Panics
    /// When there is no value, or one that is not a number: then there is nothing to be said.
    pub fn of(values: &[f64]) -> Self {
        assert!(!values.is_empty(), "no values");
        assert!(values.iter().all(|v| v.is_finite()), "not a number");
        let mut sorted = values.to_vec();
        sorted.sort_by(f64::total_cmp);
        let (mean, spread) = mean_and_spread(values);
        Self {
            sorted,
            mean,
            spread,
        }
    }

    pub fn count(&self) -> usize {
        self.sorted.len()
    }

    /// The value below which that share of all lies, between its two neighbours in proportion.
    pub fn quantile(&self, share: f64) -> f64 {
        let place = share * (self.sorted.len() - 1) as f64;
        let (low, high) = (place.floor() as usize, place.ceil() as usize);
        let (low_value, high_value) = (self.sorted[low], self.sorted[high]);
        low_value + (high_value - low_value) * (place - low as f64)
    }

    /// The share of values from `low` to `high`.
    pub fn share_within(&self, low: f64, high: f64) -> f64 {
        let within = |value: &&f64| (low..=high).contains(*value);
        self.sorted.iter().filter(within).count() as f64 / self.count() as f64
    }
}

impl Display for Statistics {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{:>6} {:>9.2} {:>8.2}",
            self.count(),
            self.mean,
            self.spread
        )?;
        for share in SHARES {
            write!(f, " {:>8.1}", self.quantile(share))?;
        }
        Ok(())
    }
}

/// Which quantiles a table shows.
const SHARES: [f64; 7] = [0.0, 0.01, 0.05, 0.5, 0.95, 0.99, 1.0];

/// A table with a line for each name.
pub fn table(title: &str, rows: &[(String, Statistics)]) -> String {
    let wide = rows.iter().map(|(name, _)| name.chars().count()).max();
    let wide = wide.unwrap_or(0).max(title.chars().count());
    let mut text = format!("{title:<wide$}  count      mean   spread");
    for share in SHARES {
        let head = match share {
            0.0 => "least".to_owned(),
            1.0 => "most".to_owned(),
            _ => format!("{:.0} %", 100.0 * share),
        };
        text += &format!(" {head:>8}");
    }
    for (name, row) in rows {
        text += &format!("\n{name:<wide$} {row}");
    }
    text
}

/// Prints the table past the capture of the test runner.
pub fn tell_table(title: &str, rows: &[(String, Statistics)]) {
    tell(&table(title, rows));
}

/// Mean and standard deviation of a sample.
pub fn mean_and_spread(values: &[f64]) -> (f64, f64) {
    let n = values.len() as f64;
    let mean = values.iter().sum::<f64>() / n;
    let square = values.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>();
    (mean, (square / (n - 1.0).max(1.0)).sqrt())
}

/// How far two lists of values go together: from -1 to 1.
pub fn correlation(a: &[f64], b: &[f64]) -> f64 {
    let ((mean_a, spread_a), (mean_b, spread_b)) = (mean_and_spread(a), mean_and_spread(b));
    let pairs = a.iter().zip(b);
    let product: f64 = pairs.map(|(x, y)| (x - mean_a) * (y - mean_b)).sum();
    product / (a.len() as f64 - 1.0) / spread_a / spread_b
}
