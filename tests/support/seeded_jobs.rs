//! Jobs drawn by a seed, and what comes of them in a few lines: the same on every machine, so that
//! two machines can be compared. Every block, ease, sleeve, alteration, width and unit occurs.
#![allow(dead_code)]

use blockwright::job::{Job, JobError, JobFile, LayOutcome, LayRun, run};
use blockwright::lay::Cloth;
use blockwright::recipe::Ways;
use std::fmt::Write as _;

/// Numbers that look drawn by chance: xorshift (Marsaglia 2003), in whole numbers alone.
struct Dice(u64);

impl Dice {
    /// A whole number from `low` to `high`.
    fn whole(&mut self, low: u64, high: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        low + (self.0 >> 16) % (high - low + 1)
    }

    fn one_in(&mut self, count: u64) -> bool {
        self.whole(1, count) == 1
    }

    fn of<'a>(&mut self, words: &[&'a str]) -> &'a str {
        words[self.whole(0, words.len() as u64 - 1) as usize]
    }
}

/// An alteration with an amount in place of `#`.
struct Step {
    name: &'static str,
    settings: &'static str,
    amounts: (u64, u64),
    /// Whether the amount may be negative.
    either: bool,
    /// Whether it may be made on one side: what changes the fold may not.
    one_side: bool,
    on: On,
}

/// The blocks that an alteration suits.
enum On {
    All,
    Trunk,
    Hips,
    Sleeve,
    BackDarts,
}

const fn step(
    (name, settings): (&'static str, &'static str),
    amounts: (u64, u64),
    [either, one_side]: [bool; 2],
    on: On,
) -> Step {
    Step {
        name,
        settings,
        amounts,
        either,
        one_side,
        on,
    }
}

const STEPS: [Step; 39] = [
    step(
        ("back_length_reduction", "amount: #, hips_checked: true"),
        (5, 20),
        [false, false],
        On::All,
    ),
    step(
        (
            "back_length_reduction",
            "amount: #, hinge: shared, hips_checked: true",
        ),
        (5, 20),
        [false, false],
        On::Trunk,
    ),
    step(
        (
            "back_length_reduction",
            "amount: #, hinge: least_distortion, hips_checked: true",
        ),
        (5, 20),
        [false, false],
        On::Trunk,
    ),
    step(
        ("back_length_increase", "amount: #, fullness: dart"),
        (3, 10),
        [false, false],
        On::Trunk,
    ),
    step(
        ("shoulder_blade", "amount: #"),
        (2, 5),
        [true, true],
        On::Trunk,
    ),
    step(
        ("shoulder_slope", "degrees: #"),
        (1, 4),
        [true, true],
        On::Trunk,
    ),
    step(
        ("front_length", "amount: #"),
        (3, 12),
        [true, true],
        On::Trunk,
    ),
    step(
        ("forward_shoulder", "amount: #"),
        (3, 12),
        [false, true],
        On::Trunk,
    ),
    step(
        ("shoulder_width", "amount: #"),
        (3, 10),
        [true, true],
        On::Trunk,
    ),
    step(
        ("armscye_depth", "amount: #"),
        (3, 12),
        [true, true],
        On::Trunk,
    ),
    step(
        ("neckline_depth", "amount: #"),
        (3, 15),
        [true, false],
        On::Trunk,
    ),
    step(
        ("neckline_width", "amount: #"),
        (3, 10),
        [true, true],
        On::Trunk,
    ),
    step(
        ("neckline_gape", "amount: #"),
        (2, 8),
        [false, true],
        On::Trunk,
    ),
    step(
        ("bust_point", "amount: #, direction: down"),
        (5, 15),
        [true, true],
        On::Trunk,
    ),
    step(
        ("elbow_width", "amount: #"),
        (4, 16),
        [true, true],
        On::Sleeve,
    ),
    step(
        ("forearm_width", "amount: #"),
        (4, 14),
        [true, true],
        On::Sleeve,
    ),
    step(
        ("sleeve_pitch", "amount: #"),
        (4, 14),
        [true, true],
        On::Sleeve,
    ),
    step(
        ("back_neck_gape", "amount: #"),
        (2, 6),
        [true, true],
        On::Trunk,
    ),
    step(
        ("back_neck_gape", "amount: #, fullness: dart"),
        (2, 8),
        [false, true],
        On::Trunk,
    ),
    step(
        ("armscye_gape", "amount: #, side: front"),
        (2, 8),
        [false, false],
        On::Trunk,
    ),
    step(
        ("bust_girth", "amount: #"),
        (4, 32),
        [true, true],
        On::Trunk,
    ),
    step(
        ("back_width", "amount: #"),
        (3, 12),
        [true, true],
        On::Trunk,
    ),
    step(
        ("front_width", "amount: #"),
        (3, 10),
        [true, true],
        On::Trunk,
    ),
    step(
        ("length", "at: bodice, amount: #"),
        (3, 20),
        [true, false],
        On::Trunk,
    ),
    step(
        ("length", "at: skirt, amount: #"),
        (3, 60),
        [true, false],
        On::Hips,
    ),
    step(
        ("length", "at: sleeve, amount: #"),
        (3, 30),
        [true, false],
        On::Sleeve,
    ),
    step(("bust", "amount: #"), (3, 12), [true, true], On::Trunk),
    step(("waist_girth", "amount: #"), (4, 24), [true, true], On::All),
    step(("hip_girth", "amount: #"), (4, 30), [true, true], On::Hips),
    step(("high_hip", "amount: #"), (4, 20), [true, true], On::Hips),
    step(("side_seam", "amount: #"), (3, 10), [true, true], On::Hips),
    step(("seat", "amount: #"), (3, 12), [true, false], On::Hips),
    step(
        ("seat", "amount: 8, width: #"),
        (4, 16),
        [true, false],
        On::Hips,
    ),
    step(("abdomen", "amount: #"), (3, 12), [false, false], On::Hips),
    step(
        ("upper_arm", "amount: #"),
        (3, 15),
        [true, true],
        On::Sleeve,
    ),
    step(
        ("wrist_width", "amount: #"),
        (3, 15),
        [true, true],
        On::Sleeve,
    ),
    step(
        ("dart_relocation", "dart: bust, to: shoulder, at: 0.#"),
        (3, 7),
        [false, true],
        On::Trunk,
    ),
    step(
        (
            "dart_division",
            "dart: bust, into: [{to: shoulder, at: 0.5, share: 0.#}]",
        ),
        (2, 7),
        [false, true],
        On::Trunk,
    ),
    step(
        ("dart_to_seam", "darts: [shoulder, waist]"),
        (1, 2),
        [false, false],
        On::BackDarts,
    ),
];

impl On {
    fn suits(&self, block: &str, sleeved: bool) -> bool {
        match self {
            Self::All => true,
            Self::Trunk => block != "skirt",
            Self::Hips => block != "bodice",
            Self::Sleeve => sleeved,
            Self::BackDarts => ["bodice", "[bodice, skirt]", "dress"].contains(&block),
        }
    }
}

/// The text of a job, whole in itself.
pub fn job_text(number: u32) -> String {
    let mut dice = Dice((u64::from(number) + 1).wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1);
    for _ in 0..8 {
        dice.whole(0, 1);
    }
    let d = &mut dice;
    let blocks = [
        "bodice",
        "skirt",
        "[bodice, skirt]",
        "dress",
        "tunic",
        "shirt",
    ];
    let block = blocks[number as usize % blocks.len()];
    let mut text = format!("title: Seeded job {number}\nblock: {block}\n");
    if d.one_in(3) {
        text += "size: 40\ndate: 2026-03-14\n";
    }
    text += &body(d);
    text += &ease(d, block);
    text += &shape(d, block);
    let sleeved = text.contains("sleeve: short") || text.contains("sleeve: long");
    text += &steps(d, number, |step| step.on.suits(block, sleeved));
    text += &paper(d);
    text
}

fn body(d: &mut Dice) -> String {
    let (height, bust) = (d.whole(1500, 1820), d.whole(780, 1240));
    let waist = bust - d.whole(70, 220);
    let hip = bust + d.whole(0, 130);
    let mut all = format!(
        "height: {height}.{} mm, bust_girth: {bust} mm, waist_girth: {waist} mm, hip_girth: {hip} mm",
        d.whole(0, 9)
    );
    if d.one_in(3) {
        // Quarters of inches, as a tape has them.
        all = format!(
            "height: {} 1/2 in, bust_girth: {} 1/4 in, waist_girth: {} 3/4 in, hip_girth: {} in",
            height / 25,
            bust / 25,
            waist / 25,
            hip / 25 + 1
        );
    }
    if d.one_in(2) {
        let _ = write!(
            all,
            ", back_waist_length: {} mm",
            height * 23 / 100 + d.whole(0, 30)
        );
    }
    if d.one_in(3) {
        let _ = write!(all, ", shoulder_slope: {}", d.whole(18, 27));
    }
    if d.one_in(3) {
        let _ = write!(
            all,
            ", arm_length: {} mm",
            height * 33 / 100 + d.whole(0, 25)
        );
    }
    let unit = d.of(&["cm", "in", "mm"]);
    format!("body: {{name: Ada, unit: {unit}, measurements: {{{all}}}}}\n")
}

fn ease(d: &mut Dice, block: &str) -> String {
    let fit = d.of(&["close", "regular", "loose"]);
    if d.one_in(2) {
        return format!("ease: {fit}\n");
    }
    let what = if block == "skirt" { "hip" } else { "bust" };
    format!("ease: {{fit: {fit}, {what}: {}}}\n", d.whole(40, 140))
}

fn shape(d: &mut Dice, block: &str) -> String {
    let mut text = String::new();
    if block != "skirt" {
        let sleeve = d.of(&["none", "short", "long"]);
        let _ = writeln!(text, "sleeve: {sleeve}");
    }
    if block != "bodice" && d.one_in(3) {
        let _ = writeln!(text, "length: {} cm", d.whole(45, 90));
    }
    if ["dress", "tunic", "shirt"].contains(&block) && d.one_in(3) {
        let _ = writeln!(text, "side: {}", d.of(&["shaped", "straight"]));
    }
    text
}

fn steps(d: &mut Dice, number: u32, suits: impl Fn(&Step) -> bool) -> String {
    let suited: Vec<&Step> = STEPS.iter().filter(|step| suits(step)).collect();
    let mut text = String::new();
    for place in 0..d.whole(0, 3) {
        // Each in its turn, so that all occur.
        let at = (number / 6) as usize + 7 * place as usize;
        let step = suited[at % suited.len()];
        let sign = if step.either && d.one_in(3) { "-" } else { "" };
        let amount = d.whole(step.amounts.0, step.amounts.1);
        let mut settings = step.settings.replace('#', &format!("{sign}{amount}"));
        if step.one_side && d.one_in(3) {
            let _ = write!(settings, ", side: {}", d.of(&["left", "right"]));
        }
        let _ = writeln!(text, "  - {}: {{{settings}}}", step.name);
    }
    match text.is_empty() {
        true => text,
        false => format!("alterations:\n{text}"),
    }
}

fn paper(d: &mut Dice) -> String {
    let mut text = "dxf: true\n".to_owned();
    if d.one_in(2) {
        let _ = writeln!(
            text,
            "allowance: {{default: {}, neckline: {}, hem: {}}}",
            d.whole(8, 15),
            d.whole(6, 10),
            d.whole(20, 40)
        );
    }
    let paper = d.of(&["a4", "letter", "a3", "legal", "a0", "roll-914"]);
    let _ = writeln!(text, "print: {{paper: {paper}}}");
    text
}

/// The files of a job and its report, or in words why there are none.
fn files(number: u32) -> Result<Vec<(String, Vec<u8>)>, String> {
    let job = JobFile::parse(&job_text(number)).map_err(|errors| errors.to_string())?;
    let mut job = job.resolve(None).map_err(|error| error.to_string())?;
    // To compare ways is to make chains again: one job in four shows it.
    if !number.is_multiple_of(4) {
        job.ways = Ways::Skipped;
    }
    job.print.embed = false; // Another machine need not have the fonts.
    let outcome = run(&job).map_err(|error| error.to_string())?;
    let report = ("report".to_owned(), outcome.report.text().into_bytes());
    let files = outcome.files.into_iter();
    let files = files.map(|file| (file.name, file.bytes));
    let laid = (number % 6 == 3).then(|| lay(&job, number));
    Ok(files
        .chain([report])
        .chain(laid.into_iter().flatten())
        .collect())
}

/// How many rounds a lay is searched for.
const ROUNDS: u32 = 8;

/// The files of the lay of a job on some cloth, or why there is none.
fn lay(job: &Job, number: u32) -> Vec<(String, Vec<u8>)> {
    let mut dice = Dice(u64::from(number) + 1);
    let width = dice.whole(1100, 1600) as f64;
    let laid = || -> Result<LayOutcome, JobError> {
        let mut cloth = Cloth::new(width)?.with_gap(f64::from(number % 4) * 2.5)?;
        // Folded, a second search on the opened cloth is compared, which takes a second.
        if number % 120 == 33 {
            cloth = cloth.folded();
        }
        let mut run = LayRun::new(job, &cloth, u64::from(number))?;
        for _ in 0..ROUNDS {
            run.search.round();
        }
        run.outcome()
    };
    match laid() {
        Ok(outcome) => (outcome.files.into_iter())
            .map(|file| (file.name, file.bytes))
            .collect(),
        Err(error) => vec![("lay refused".to_owned(), error.to_string().into_bytes())],
    }
}

/// A line for each file of a job: its number, the name of the file, its length and a fingerprint.
/// A job that is refused has one line, with the reason.
pub fn summary(number: u32) -> String {
    let mut text = String::new();
    match files(number) {
        Ok(files) => {
            for (name, bytes) in files {
                let (length, print) = (bytes.len(), fingerprint(&bytes));
                let _ = writeln!(text, "{number} {name} {length} {print:016x}");
            }
        }
        Err(reason) => {
            let _ = writeln!(text, "{number} refused: {}", reason.replace('\n', " | "));
        }
    }
    text
}

/// The job and its files, one after the other, to look at a difference.
pub fn whole(number: u32) -> String {
    let mut text = job_text(number);
    for (name, bytes) in files(number).unwrap_or_default() {
        let _ = writeln!(text, "==== {name}");
        text += &String::from_utf8_lossy(&bytes);
    }
    text
}

/// FNV-1a, 64 bits (Fowler, Noll and Vo; constants from memory).
fn fingerprint(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}
