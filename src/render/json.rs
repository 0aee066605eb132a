//! The pattern document: the whole pattern as JSON, for other programs.
//!
//! Lengths are millimetres, angles degrees, all rounded to a ten-thousandth, so that the same
//! pattern always gives the same text. Paths are SVG path data; each edge starts where the one
//! before it ended, and an edge that carries a dart is given with the dart open.

use serde::Serialize as Derive;
use serde::ser::{Serialize, Serializer};

use crate::allowance::CutLines;
use crate::alterations::Account;
use crate::geometry::{Curve, Point};
use crate::measurements::Body;
use crate::piece::{Dart, EaseOn, Edge, EdgeRef, Girth, Measure, Pattern, Piece, Seam};

/// The pattern as pretty-printed JSON, ending in a line feed, with the accounts of the
/// alterations that made it.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::render::json;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Skirt))?;
/// let text = json::render(&pattern, &body, "Skirt", &[]);
/// assert!(text.contains("\"format\": \"blockwright-pattern\""));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn render(pattern: &Pattern, body: &Body, title: &str, accounts: &[Account]) -> String {
    written(Document::new(pattern, body, title, accounts))
}

/// The same with the cut line of every piece, a closed path under `cut_line`.
///
/// ```
/// use blockwright::allowance::{Allowances, CutLines};
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::render::json;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Skirt))?;
/// let cut = CutLines::new(&pattern, &Allowances::usual())?;
/// let text = json::render_to_cut(&pattern, &body, "Skirt", &[], &cut);
/// assert!(text.contains("\"cut_line\": \"M"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn render_to_cut(
    pattern: &Pattern,
    body: &Body,
    title: &str,
    accounts: &[Account],
    cut: &CutLines,
) -> String {
    written(Document::new(pattern, body, title, accounts).with_cut(cut))
}

fn written(document: Document<'_>) -> String {
    // Strings, finite numbers and string keys only: nothing that JSON cannot hold.
    let mut text = serde_json::to_string_pretty(&document).unwrap_or_default();
    text.push('\n');
    text
}

/// The same as a value, to be written as part of a larger document.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::render::json;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Skirt))?;
/// let value = serde_json::to_value(json::document(&pattern, &body, "Skirt", &[]))?;
/// assert_eq!(value["block"], "skirt");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn document<'a>(
    pattern: &'a Pattern,
    body: &'a Body,
    title: &'a str,
    accounts: &'a [Account],
) -> impl Serialize + 'a {
    Document::new(pattern, body, title, accounts)
}

/// The same value with the cut line of every piece.
///
/// ```
/// use blockwright::allowance::{Allowances, CutLines};
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::render::json;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Skirt))?;
/// let cut = CutLines::new(&pattern, &Allowances::usual())?;
/// let value = serde_json::to_value(json::document_to_cut(&pattern, &body, "Skirt", &[], &cut))?;
/// assert!(value["pieces"][0]["cut_line"].is_string());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn document_to_cut<'a>(
    pattern: &'a Pattern,
    body: &'a Body,
    title: &'a str,
    accounts: &'a [Account],
    cut: &CutLines,
) -> impl Serialize + 'a {
    Document::new(pattern, body, title, accounts).with_cut(cut)
}

/// A length or angle rounded to a ten-thousandth, without a minus before zero; nothing where
/// there is none.
#[derive(Clone, Copy)]
struct Number(f64);

impl Serialize for Number {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if !self.0.is_finite() {
            return serializer.serialize_none();
        }
        serializer.serialize_f64((self.0 * 1e4).round() / 1e4 + 0.0)
    }
}

/// Pairs written as an object, in their order.
struct Named<V>(Vec<(String, V)>);

impl<V: Serialize> Serialize for Named<V> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(key, value)| (key, value)))
    }
}

#[derive(Derive)]
struct Document<'a> {
    format: &'static str,
    version: u32,
    units: &'static str,
    title: &'a str,
    block: &'a str,
    body: &'a Body,
    pieces: Vec<PieceDocument<'a>>,
    seams: Vec<SeamDocument<'a>>,
    girths: Named<GirthDocument>,
    account: Vec<AccountDocument<'a>>,
    warnings: Vec<WarningDocument<'a>>,
}

#[derive(Derive)]
struct PieceDocument<'a> {
    name: &'a str,
    cut: &'static str,
    edges: Vec<EdgeDocument<'a>>,
    darts: Vec<DartDocument<'a>>,
    points: Vec<PointDocument<'a>>,
    grain: [[Number; 2]; 2],
    notches: Vec<NotchDocument<'a>>,
    lines: Vec<LineDocument<'a>>,
    cut_line: Option<String>,
}

#[derive(Derive)]
struct EdgeDocument<'a> {
    name: &'a str,
    role: &'static str,
    path: String,
}

#[derive(Derive)]
struct DartDocument<'a> {
    name: &'a str,
    edge: Option<&'a str>,
    legs: [[Number; 2]; 2],
    apexes: Vec<[Number; 2]>,
}

#[derive(Derive)]
struct PointDocument<'a> {
    name: &'a str,
    at: [Number; 2],
}

#[derive(Derive)]
struct NotchDocument<'a> {
    name: &'a str,
    edge: &'a str,
    at: Number,
}

#[derive(Derive)]
struct LineDocument<'a> {
    name: &'a str,
    path: String,
}

#[derive(Derive)]
struct SeamDocument<'a> {
    name: &'a str,
    a: Vec<EdgeRefDocument<'a>>,
    b: Vec<EdgeRefDocument<'a>>,
    ease: Number,
    ease_on: Option<&'static str>,
}

#[derive(Derive)]
struct EdgeRefDocument<'a> {
    piece: &'a str,
    edge: &'a str,
}

#[derive(Derive)]
struct GirthDocument {
    body: Number,
    ease: Number,
    finished: Number,
}

#[derive(Derive)]
struct AccountDocument<'a> {
    alteration: &'a str,
    amount: Option<Number>,
    changes: Vec<ChangeDocument<'a>>,
    kept: Vec<String>,
    kept_measures: &'a [Measure],
}

#[derive(Derive)]
struct ChangeDocument<'a> {
    what: String,
    measure: &'a Measure,
    before: Option<Number>,
    after: Option<Number>,
}

#[derive(Derive)]
struct WarningDocument<'a> {
    code: &'a str,
    text: &'a str,
}

impl<'a> Document<'a> {
    fn new(pattern: &'a Pattern, body: &'a Body, title: &'a str, accounts: &'a [Account]) -> Self {
        Self {
            format: "blockwright-pattern",
            version: 1,
            units: "mm",
            title,
            block: pattern.block(),
            body,
            pieces: pattern.pieces().iter().map(piece).collect(),
            seams: pattern.seams().iter().map(seam).collect(),
            girths: Named(
                pattern
                    .girths()
                    .iter()
                    .map(|g| (g.name.clone(), girth(pattern, g)))
                    .collect(),
            ),
            account: accounts.iter().map(account).collect(),
            warnings: pattern
                .warnings()
                .iter()
                .map(|w| WarningDocument {
                    code: &w.code,
                    text: &w.text,
                })
                .collect(),
        }
    }

    fn with_cut(mut self, cut: &CutLines) -> Self {
        for piece in &mut self.pieces {
            piece.cut_line = cut.of(piece.name).map(closed);
        }
        self
    }
}

fn piece(piece: &Piece) -> PieceDocument<'_> {
    PieceDocument {
        name: piece.name(),
        cut: piece.cut().name(),
        edges: piece.outline().edges().iter().map(edge).collect(),
        darts: piece.darts().iter().map(dart).collect(),
        points: piece
            .points()
            .iter()
            .map(|p| PointDocument {
                name: &p.name,
                at: point(p.at),
            })
            .collect(),
        grain: piece.grain().map(point),
        notches: piece
            .notches()
            .iter()
            .map(|n| NotchDocument {
                name: &n.name,
                edge: n.edge.as_str(),
                at: Number(n.at),
            })
            .collect(),
        lines: piece
            .lines()
            .iter()
            .map(|l| LineDocument {
                name: &l.name,
                path: path(&l.curve),
            })
            .collect(),
        cut_line: None,
    }
}

fn edge(edge: &Edge) -> EdgeDocument<'_> {
    EdgeDocument {
        name: edge.name().as_str(),
        role: edge.role().name(),
        path: path(edge.curve()),
    }
}

fn dart(dart: &Dart) -> DartDocument<'_> {
    DartDocument {
        name: &dart.name,
        edge: dart.edge.as_ref().map(|e| e.as_str()),
        legs: dart.legs.map(point),
        apexes: dart.apexes.points().into_iter().map(point).collect(),
    }
}

fn seam(seam: &Seam) -> SeamDocument<'_> {
    SeamDocument {
        name: &seam.name,
        a: seam.a.iter().map(edge_ref).collect(),
        b: seam.b.iter().map(edge_ref).collect(),
        ease: Number(seam.ease),
        ease_on: seam.ease_on.map(|on| match on {
            EaseOn::A => "a",
            EaseOn::B => "b",
        }),
    }
}

fn edge_ref(edge: &EdgeRef) -> EdgeRefDocument<'_> {
    EdgeRefDocument {
        piece: &edge.piece,
        edge: edge.edge.as_str(),
    }
}

fn girth(pattern: &Pattern, girth: &Girth) -> GirthDocument {
    GirthDocument {
        body: Number(girth.body),
        ease: Number(girth.ease),
        finished: Number(pattern.finished(girth)),
    }
}

fn account(account: &Account) -> AccountDocument<'_> {
    let changes = account.changes.iter().map(|change| ChangeDocument {
        what: change.measure.to_string(),
        measure: &change.measure,
        before: change.before.map(Number),
        after: change.after.map(Number),
    });
    AccountDocument {
        alteration: &account.alteration,
        amount: account.amount.map(Number),
        changes: changes.collect(),
        kept: account.kept.iter().map(Measure::to_string).collect(),
        kept_measures: &account.kept,
    }
}

fn point(p: Point) -> [Number; 2] {
    [Number(p.x), Number(p.y)]
}

/// SVG path data with four decimals.
fn path(curve: &Curve) -> String {
    super::path_data::path_data(&curve.to_path(), 4)
}

/// SVG path data of a closed chain.
fn closed(curve: &Curve) -> String {
    path(curve) + "Z"
}
