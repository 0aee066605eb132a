//! A random case: the text of a job, of a size table, of rows of people, a cloth.

use crate::support::bodies::Dice;
use blockwright::alterations::CATALOGUE;
use blockwright::measurements::Measurement;
use blockwright::piece::MeasureUnit;
use serde_json::{Value, json};

/// Everything that is asked of one seed.
pub struct Case {
    /// The unit in which bodies are measured.
    pub unit: &'static str,
    /// A job with its body.
    pub job: String,
    /// The same job without its body, for a table of sizes or of people.
    pub bare: String,
    /// A table of two or three sizes.
    pub table: String,
    /// The header of a table of people, and rows.
    pub people: Vec<Vec<String>>,
    /// Width of the cloth in millimetres, whether it is folded, and the gap.
    pub cloth: (f64, bool, f64),
    /// Which of them are made besides the job itself.
    pub also: Also,
}

/// What is made besides the job itself.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Also {
    Nothing,
    Range,
    People,
    Lay,
}

/// A die with the throws that cases need.
struct Throws(Dice);

impl Throws {
    fn one_in(&mut self, sides: usize) -> bool {
        self.below(sides) == 0
    }

    fn below(&mut self, count: usize) -> usize {
        (self.0.within(0.0, count as f64) as usize).min(count - 1)
    }

    fn pick<T: Copy>(&mut self, from: &[T]) -> T {
        from[self.below(from.len())]
    }

    fn within(&mut self, low: f64, high: f64) -> f64 {
        self.0.within(low, high)
    }
}

const BLOCKS: [&str; 6] = [
    "bodice",
    "skirt",
    "[bodice, skirt]",
    "dress",
    "tunic",
    "shirt",
];

const DARTS: [&str; 6] = [
    "bust",
    "waist",
    "shoulder",
    "elbow",
    "waist inner",
    "waist outer",
];

const EDGES: [&str; 9] = [
    "shoulder",
    "neckline",
    "armscye",
    "side_seam",
    "waist",
    "hem",
    "centre_front",
    "sleeve_cap",
    "wrist",
];

const PAPERS: [&str; 10] = [
    "a4",
    "letter",
    "a3",
    "legal",
    "a0",
    "roll-594",
    "roll-610",
    "roll-841",
    "roll-914",
    "roll-1067",
];

const PLACES: [&str; 11] = [
    "neckline",
    "shoulder",
    "armscye",
    "side_seam",
    "waist",
    "hem",
    "sleeve_cap",
    "underarm",
    "wrist",
    "centre_back",
    "centre_front",
];

impl Case {
    pub fn of(seed: u64) -> Self {
        let mut throws = Throws(Dice::new(seed + 1));
        for _ in 0..8 {
            throws.within(0.0, 1.0);
        }
        let sleeved = throws.pick(&["none", "short", "long"]);
        let block = throws.pick(&BLOCKS);
        let bare = job(&mut throws, block, sleeved);
        let unit = ["mm", "cm", "in"][(seed % 3) as usize];
        let taken = body(&mut throws);
        let set = format!(
            "body: {{name: Ada, unit: {unit}, measurements: {}}}\n",
            flow(&taken, unit)
        );
        let job = format!("{bare}{set}{}", alterations(&mut throws, true));
        let bare = format!("{bare}{}", alterations(&mut throws, false));
        let table = table(&mut throws, unit);
        let people = people(&mut throws, unit);
        let width = throws.pick(&[300.0, 900.0, 1100.0, 1400.0, 1500.0, 3000.0]);
        let width = width + throws.within(-20.0, 20.0);
        let gap = throws.pick(&[0.0, 5.0, 40.0]);
        let cloth = (width, throws.one_in(2), gap);
        let also = throws.pick(&[
            Also::Nothing,
            Also::Nothing,
            Also::Nothing,
            Also::Nothing,
            Also::Range,
            Also::People,
            Also::People,
            Also::Lay,
        ]);
        Self {
            unit,
            job,
            bare,
            table,
            people,
            cloth,
            also,
        }
    }

    /// What a person needs to run it again.
    pub fn describe(&self) -> String {
        match self.also {
            Also::Nothing => self.job.clone(),
            Also::Lay => format!("{}cloth: {:?}\n", self.job, self.cloth),
            Also::Range => format!(
                "{}-- or --\n{}-- table --\n{}",
                self.job, self.bare, self.table
            ),
            Also::People => format!(
                "{}-- or --\n{}-- people --\n{:?}",
                self.job, self.bare, self.people
            ),
        }
    }
}

/// Measurements by name: in two cases of three of a plausible woman, else anywhere in their
/// ranges, so that they contradict each other.
fn body(throws: &mut Throws) -> Vec<(Measurement, f64)> {
    use Measurement as M;
    let wild = throws.one_in(3);
    let bust = if wild {
        throws.within(650.0, 1750.0)
    } else {
        throws.within(780.0, 1250.0)
    };
    let four = if wild {
        [
            (M::Height, anywhere(throws, M::Height)),
            (M::BustGirth, bust),
            (M::WaistGirth, anywhere(throws, M::WaistGirth)),
            (M::HipGirth, anywhere(throws, M::HipGirth)),
        ]
    } else {
        [
            (M::Height, throws.within(1480.0, 1850.0)),
            (M::BustGirth, bust),
            (M::WaistGirth, bust - throws.within(20.0, 240.0)),
            (M::HipGirth, bust + throws.within(-40.0, 160.0)),
        ]
    };
    let mut taken: Vec<(M, f64)> = four.to_vec();
    let Ok(plain) = blockwright::measurements::Body::from_taken(four) else {
        return taken;
    };
    for m in M::ALL {
        let Some(estimate) = plain.estimate(m) else {
            continue;
        };
        if !throws.one_in(4) {
            continue;
        }
        let spread = 0.12 * estimate.value;
        let range = m.range();
        let value = if wild && throws.one_in(3) {
            anywhere(throws, m)
        } else {
            estimate.value + throws.within(-spread, spread)
        };
        taken.push((m, value.max(range.low).min(range.high)));
    }
    taken
}

fn anywhere(throws: &mut Throws, m: Measurement) -> f64 {
    let range = m.range();
    match throws.below(8) {
        0 => range.low,
        1 => range.high,
        _ => throws.within(range.low, range.high),
    }
}

/// A value as it is written: slopes in degrees.
fn written((m, value): &(Measurement, f64), unit: &str) -> (String, String) {
    let value = match m {
        Measurement::ShoulderSlope => format!("{:.2} deg", value.to_degrees()),
        _ => {
            let mm = (value * 10.0).round() / 10.0;
            match unit {
                "cm" => format!("{:.2}", mm / 10.0),
                "in" => (mm / 25.4).to_string(),
                _ => format!("{mm:.1}"),
            }
        }
    };
    (m.to_string(), value)
}

fn flow(taken: &[(Measurement, f64)], unit: &str) -> String {
    let each: Vec<String> = taken
        .iter()
        .map(|taken| written(taken, unit))
        .map(|(name, value)| format!("{name}: {value}"))
        .collect();
    format!("{{{}}}", each.join(", "))
}

/// A job without body and alterations; what the block does not have is left out mostly.
fn job(throws: &mut Throws, block: &str, sleeve: &str) -> String {
    let mut text = format!("title: Case\nblock: {block}\ndxf: true\n");
    let fit = throws.pick(&["close", "regular", "loose"]);
    if throws.one_in(4) {
        let place = throws.pick(&[
            "bust",
            "waist",
            "hip",
            "back_width",
            "upper_arm",
            "armscye_depth",
        ]);
        let most = throws.pick(&[20.0, 60.0, 150.0, 400.0]);
        let ease = throws.within(0.0, most);
        text += &format!("ease: {{fit: {fit}, {place}: {ease:.1}}}\n");
    } else {
        text += &format!("ease: {fit}\n");
    }
    let upper = block != "skirt";
    if upper {
        text += &format!("sleeve: {sleeve}\n");
        if sleeve != "none" && throws.one_in(5) {
            text += &format!("cap_ease: {:.1}\n", throws.within(0.0, 60.0));
        }
    }
    if block != "bodice" && throws.one_in(3) {
        text += &format!("length: {:.0}\n", throws.within(60.0, 1400.0));
    }
    if matches!(block, "dress" | "tunic" | "shirt") {
        if throws.one_in(3) {
            text += &format!("waist_darts: {}\n", throws.one_in(2));
        }
        if throws.one_in(3) {
            text += &format!("side: {}\n", throws.pick(&["shaped", "straight"]));
        }
    }
    match throws.below(4) {
        0 => text += "allowance: usual\n",
        1 => {
            let (place, width) = (throws.pick(&PLACES), throws.within(0.0, 100.0));
            let default = throws.within(0.0, 40.0);
            text += &format!("allowance: {{default: {default:.1}, {place}: {width:.1}}}\n");
        }
        _ => {}
    }
    if throws.one_in(3) {
        let paper = throws.pick(&PAPERS);
        let (margin, overlap) = (throws.within(12.0, 50.0), throws.within(8.0, 50.0));
        text += &format!("print: {{paper: {paper}, margin: {margin:.0}, overlap: {overlap:.0}}}\n");
    }
    text
}

/// Up to three alterations, alone, in pairs, on one side; the amounts mostly as usual.
fn alterations(throws: &mut Throws, with_body: bool) -> String {
    let count = throws.pick(&[0, 1, 1, 1, 2, 2, 3]);
    if count == 0 {
        return String::new();
    }
    let steps: Vec<String> = (0..count)
        .map(|_| {
            let (name, settings) = alteration(throws, with_body);
            format!("  - {name}: {settings}\n")
        })
        .collect();
    format!("alterations:\n{}", steps.concat())
}

fn alteration(throws: &mut Throws, with_body: bool) -> (&'static str, Value) {
    let entry = &CATALOGUE[throws.below(CATALOGUE.len())];
    let mut settings = if entry.name.starts_with("dart_") {
        dart(throws, entry.name)
    } else {
        let example = (entry.example)();
        let usual = example.amount().unwrap_or(10.0);
        let most = throws.pick(&[1.0, 2.0, 2.0, 4.0, 30.0]);
        let amount = (10.0 * usual * throws.within(-most, most)).round() / 10.0;
        let key = match example.unit() {
            MeasureUnit::Millimetres => "amount",
            MeasureUnit::Degrees => "degrees",
        };
        match throws.below(10) {
            0 if with_body => json!({"to": "body"}),
            1 => json!({"to": throws.within(0.0, 1200.0).round()}),
            _ => json!({key: amount}),
        }
    };
    if let Value::Object(map) = &mut settings {
        match entry.name {
            "back_length_reduction" => {
                map.insert("hips_checked".to_owned(), json!(true));
                if throws.one_in(3) {
                    map.insert(
                        "hinge".to_owned(),
                        json!(throws.pick(&["shared", "least_distortion"])),
                    );
                }
            }
            "length" => {
                map.insert(
                    "at".to_owned(),
                    json!(throws.pick(&["bodice", "skirt", "sleeve"])),
                );
            }
            "armscye_gape" => {
                map.insert("side".to_owned(), json!(throws.pick(&["front", "back"])));
            }
            _ => {}
        }
        if throws.one_in(6) && entry.name != "armscye_gape" {
            map.insert("side".to_owned(), json!(throws.pick(&["left", "right"])));
        }
    }
    (entry.name, settings)
}

/// The settings of an alteration of darts.
fn dart(throws: &mut Throws, name: &str) -> Value {
    let (dart, other) = (throws.pick(&DARTS), throws.pick(&DARTS));
    let (edge, next) = (throws.pick(&EDGES), throws.pick(&EDGES));
    let place = |throws: &mut Throws| match throws.below(6) {
        0 => 0.0,
        1 => 1.0,
        _ => (100.0 * throws.within(0.0, 1.0)).round() / 100.0,
    };
    let (at, second, share) = (place(throws), place(throws), place(throws));
    match name {
        "dart_merging" if throws.one_in(2) => json!({"darts": [dart, other]}),
        "dart_merging" => json!({"darts": [dart, other], "to": edge}),
        "dart_division" if throws.one_in(2) => json!({"dart": dart, "into": [
            {"to": edge, "at": at, "share": share},
            {"to": next, "at": second, "share": 1.0 - share},
        ]}),
        "dart_division" => json!({"dart": dart, "into": [{"to": edge, "at": at, "share": share}]}),
        "dart_to_seam" if throws.one_in(2) => json!({"darts": [dart, other]}),
        _ => json!({"dart": dart, "to": edge, "at": at}),
    }
}

fn table(throws: &mut Throws, unit: &str) -> String {
    let count = 2 + throws.below(2);
    let sizes: Vec<String> = (0..count)
        .map(|i| format!("  S{i}: {}\n", flow(&body(throws), unit)))
        .collect();
    format!("name: Range\nunit: {unit}\nsizes:\n{}", sizes.concat())
}

fn people(throws: &mut Throws, unit: &str) -> Vec<Vec<String>> {
    let wild = [
        "",
        "0",
        "-1",
        "nan",
        "inf",
        "1e308",
        "1e-320",
        "ninety",
        "36 1/2 in",
        "92cm",
        "\u{221e}",
    ];
    let bodies: Vec<Vec<(Measurement, f64)>> = (0..3).map(|_| body(throws)).collect();
    let mut names: Vec<Measurement> = bodies.iter().flatten().map(|(m, _)| *m).collect();
    names.sort_by_key(|m| m.to_string());
    names.dedup();
    let header = |m: &Measurement| match m {
        Measurement::ShoulderSlope => m.to_string(),
        _ => format!("{m} [{unit}]"),
    };
    let mut rows = vec![names.iter().map(header).collect::<Vec<_>>()];
    rows[0].push("unit".to_owned());
    for body in bodies {
        let cell = |throws: &mut Throws, name: &Measurement| {
            if throws.one_in(40) {
                return throws.pick(&wild).to_owned();
            }
            let found = body.iter().find(|(m, _)| m == name);
            found.map_or_else(String::new, |taken| written(taken, unit).1)
        };
        let mut row: Vec<String> = names.iter().map(|name| cell(throws, name)).collect();
        row.push("mm".to_owned());
        rows.push(row);
    }
    rows
}
