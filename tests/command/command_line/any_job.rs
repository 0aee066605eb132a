//! Any job text at all, in the library.

use blockwright::job::{JobFile, run};
use proptest::prelude::*;

use crate::support::command::job;

/// The same cases on every run.
fn fixed(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        rng_algorithm: prop::test_runner::RngAlgorithm::ChaCha,
        rng_seed: prop::test_runner::RngSeed::Fixed(0x10b),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

proptest! {
    #![proptest_config(fixed(1000))]

    #[test]
    fn no_text_breaks_the_reader(text in "(\\PC|\n|[-:{},\\[\\]]){0,60}") {
        let _ = JobFile::parse(&text);
    }

    #[test]
    fn no_slip_in_a_job_breaks_it(
        at in 0.0..1.0_f64, cut in 0_usize..8, put in "[-a-z0-9:{}\\[\\], .\"\n]{0,6}",
    ) {
        let text = format!(
            "{}ease: {{fit: close, bust: 2 in}}\nlength: 60 cm\n\
             print: {{paper: a4, margin: 14}}\nsleeve: none\n",
            job("[bodice, skirt]")
        );
        let from = (at * text.len() as f64) as usize;
        let to = (from + cut).min(text.len());
        let slip = format!("{}{put}{}", &text[..from], &text[to..]);
        match JobFile::parse(&slip) {
            Err(errors) => {
                for problem in errors.all() {
                    prop_assert!(!problem.to_string().is_empty());
                    prop_assert!(problem.place.line <= slip.lines().count() as u64 + 1);
                }
            }
            Ok(file) => {
                if let Ok(job) = file.resolve(None) {
                    prop_assert_eq!(job.print.paper.name().is_empty(), false);
                    if at < 0.1 {
                        let _ = run(&job);
                    }
                }
            }
        }
    }
}
