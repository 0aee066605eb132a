//! The page as a whole.

use super::align::Align;
use super::figure::{figure, pairs};
use super::markup::{escaped, title_words, words};
use crate::alterations::{Account, MethodChoice, changes};
use crate::demonstration::Demonstration;
use crate::measurements::SetReport;
use crate::piece::Pattern;
use std::fmt::Write as _;

const STYLE: &str = include_str!("style.css");

/// What is drawn and can be switched off: name in the page's styles, and label.
const LAYERS: [(&str, &str); 6] = [
    ("before", "before"),
    ("after", "after"),
    ("darts", "darts"),
    ("guides", "balance lines"),
    ("marks", "grain and notches"),
    ("words", "words"),
];

/// Everything a fitting page shows.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement, MeasurementSet, SetReport};
/// use blockwright::render::fitting::{Fitting, page};
/// use blockwright::units::Unit;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Skirt))?;
/// let known = SetReport::new(&MeasurementSet::new("Ada", Unit::Cm, body));
/// let mut fitting = Fitting::new("Skirt", &pattern, &pattern, &known);
/// fitting.wearer = Some("Ada");
/// fitting.cautions = &["Sew a toile first."];
/// let html = page(&fitting);
/// assert!(html.contains("Nothing was altered") && html.contains("Sew a toile first."));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy)]
#[non_exhaustive]
pub struct Fitting<'a> {
    /// What the work is called.
    pub title: &'a str,
    /// The wearer's name, if there is one.
    pub wearer: Option<&'a str>,
    /// The pattern as drafted.
    pub before: &'a Pattern,
    /// The pattern after all alterations, with all its warnings.
    pub after: &'a Pattern,
    /// What each alteration changed and kept, in their order.
    pub accounts: &'a [Account],
    /// The ways of each back-length reduction, to choose from.
    pub choices: &'a [MethodChoice],
    /// What each alteration does to paper, in their order; may be empty.
    pub demonstrations: &'a [Demonstration],
    /// How every measurement is known; the page is in its unit.
    pub body: &'a SetReport,
    /// What must be known before anything is printed or cut.
    pub cautions: &'a [&'a str],
    /// How the pattern lies on another wearer.
    #[cfg(feature = "form")]
    pub fit_map: Option<super::shown_fit_map::ShownFitMap<'a>>,
}

impl<'a> Fitting<'a> {
    /// A page about a pattern before and after, with no account of the steps between.
    #[must_use]
    pub fn new(
        title: &'a str,
        before: &'a Pattern,
        after: &'a Pattern,
        body: &'a SetReport,
    ) -> Self {
        Self {
            title,
            wearer: None,
            before,
            after,
            accounts: &[],
            choices: &[],
            demonstrations: &[],
            body,
            cautions: &[],
            #[cfg(feature = "form")]
            fit_map: None,
        }
    }
}

/// The fitting page: HTML that is also well-formed XML. The same input gives the same bytes.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement, MeasurementSet, SetReport};
/// use blockwright::render::fitting::{Fitting, page};
/// use blockwright::units::Unit;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Bodice))?;
/// let known = SetReport::new(&MeasurementSet::new("Ada", Unit::Cm, body));
/// assert!(page(&Fitting::new("Bodice", &pattern, &pattern, &known)).contains("Bodice"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn page(fitting: &Fitting<'_>) -> String {
    let mut out = String::new();
    let title = escaped(fitting.title);
    let wearer = fitting
        .wearer
        .map_or_else(String::new, |name| format!(" for {}", escaped(name)));
    // Writing to a string cannot fail.
    let _ = write!(
        out,
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n\
         <title>{title}: fitting</title>\n<style>\n{STYLE}",
    );
    fitting.own_styles(&mut out);
    let _ = write!(
        out,
        "</style>\n</head>\n<body>\n<header>\n<p class=\"kind\">Fitting page</p>\n\
         <h1>{title}</h1>\n<p>{} block{wearer}. Lengths are in {}.</p>\n</header>\n\
         <main>\n",
        title_words(fitting.after.block()),
        fitting.body.unit(),
    );
    out.push_str("<section class=\"cautions\" aria-labelledby=\"cut\">\n<h2 id=\"cut\">Before you cut</h2>\n<ul>\n");
    for caution in fitting.cautions {
        let _ = writeln!(out, "<li>{}</li>", escaped(caution));
    }
    out.push_str("<li>The drawings on this page are for looking at, not for cutting: print the pattern files.</li>\n</ul>\n</section>\n");
    fitting.pattern_section(&mut out);
    let mut section = |key: &str, head: &str, fill: &dyn Fn(&mut String)| {
        let _ = writeln!(
            out,
            "<section aria-labelledby=\"{key}\">\n<h2 id=\"{key}\">{head}</h2>"
        );
        fill(&mut out);
        out.push_str("</section>\n");
    };
    #[cfg(feature = "form")]
    if fitting.fit_map.is_some() {
        section("fit-map", "Fit map", &|out| fitting.fit_map_section(out));
    }
    section("account", "What was altered", &|out| {
        fitting.accounts_tables(out);
    });
    section("warnings", "Warnings", &|out| fitting.warnings(out));
    section("girths", "Finished measurements", &|out| {
        fitting.girths_table(out);
    });
    section("body", "The body", &|out| fitting.body_table(out));
    section("seams", "Seams and darts", &|out| {
        fitting.seams_table(out);
        fitting.darts_table(out);
    });
    out.push_str("</main>\n</body>\n</html>\n");
    out
}

impl Fitting<'_> {
    fn altered(&self) -> bool {
        !self.accounts.is_empty()
    }

    /// Styles that depend on what is on the page: its switches.
    fn own_styles(&self, out: &mut String) {
        for (key, _) in LAYERS {
            let _ = writeln!(
                out,
                "body:has(#show-{key}:not(:checked)) svg .{key} {{ display: none; }}"
            );
        }
        out.push_str("body:has(#show-after:not(:checked)) svg .cloth { display: none; }\n");
        for align in Align::ALL {
            let key = align.key();
            let _ = writeln!(
                out,
                "body:has(#align-{key}:checked) .before {{ transform: translate(var(--{key})); }}"
            );
        }
        for index in 0..pairs(self.before, self.after).len() {
            let _ = writeln!(
                out,
                "body:has(#piece-{index}:not(:checked)) .piece-{index} {{ display: none; }}"
            );
        }
    }

    fn pattern_section(&self, out: &mut String) {
        let altered = self.altered();
        let head = if altered {
            "The pattern, before and after"
        } else {
            "The pattern"
        };
        let _ = writeln!(
            out,
            "<section aria-labelledby=\"pattern\">\n<h2 id=\"pattern\">{head}</h2>"
        );
        if altered {
            out.push_str(
                "<p class=\"legend\"><span class=\"key-before\"></span> before, grey and dashed \
                 <span class=\"key-after\"></span> after, black. Laid over one another on the \
                 centre and the waist line unless chosen otherwise.</p>\n",
            );
        }
        self.switches(out);
        out.push_str("<div class=\"pieces\">\n");
        let all = changes(self.before, self.after);
        for (index, (name, sides)) in pairs(self.before, self.after).into_iter().enumerate() {
            let own: Vec<String> = all
                .iter()
                .filter(|change| change.measure.piece().as_deref() == Some(&*name))
                .map(|change| {
                    let end = |value: Option<f64>| {
                        let unit = change.measure.unit();
                        value.map_or_else(|| "none".to_owned(), |v| self.value(v, unit))
                    };
                    let what = change.measure.to_string().replace('_', " ");
                    let (before, after) = (end(change.before), end(change.after));
                    format!("{what} {before} before, {after} after")
                })
                .collect();
            let description = match (altered, own.is_empty()) {
                (false, _) => "Outline, darts, balance lines, grain and notches.".to_owned(),
                (true, true) => "Unchanged by the alterations.".to_owned(),
                (true, false) => format!("{}.", own.join("; ")),
            };
            figure(out, index, (name, sides), altered, &description);
        }
        out.push_str("</div>\n</section>\n");
    }

    /// Check boxes and radio buttons; styles alone make them work.
    fn switches(&self, out: &mut String) {
        out.push_str("<form class=\"switches\">\n");
        if self.altered() {
            out.push_str("<fieldset><legend>Lay over one another on</legend>\n");
            for align in Align::ALL {
                let checked = if align == Align::Waist {
                    " checked=\"checked\""
                } else {
                    ""
                };
                let key = align.key();
                let _ = writeln!(
                    out,
                    "<label for=\"align-{key}\"><input type=\"radio\" name=\"align\" \
                     id=\"align-{key}\"{checked}/> {}</label>",
                    align.label()
                );
            }
            out.push_str("</fieldset>\n");
        }
        let mut boxes = |legend: &str, items: &[(String, String)]| {
            let _ = writeln!(out, "<fieldset><legend>{legend}</legend>");
            for (id, label) in items {
                let _ = writeln!(
                    out,
                    "<label for=\"{id}\"><input type=\"checkbox\" id=\"{id}\" \
                     checked=\"checked\"/> {label}</label>"
                );
            }
            out.push_str("</fieldset>\n");
        };
        let skip = if self.altered() { 0 } else { 2 };
        let layers: Vec<_> = LAYERS
            .iter()
            .skip(skip)
            .map(|(key, label)| (format!("show-{key}"), (*label).to_owned()))
            .collect();
        boxes("Show", &layers);
        let pieces: Vec<_> = pairs(self.before, self.after)
            .iter()
            .enumerate()
            .map(|(index, (name, _))| (format!("piece-{index}"), words(name)))
            .collect();
        boxes("Pieces", &pieces);
        out.push_str("</form>\n");
    }

    fn warnings(&self, out: &mut String) {
        if self.after.warnings().is_empty() {
            out.push_str("<p>There are none.</p>\n");
            return;
        }
        out.push_str("<ul class=\"warnings\">\n");
        for warning in self.after.warnings() {
            let _ = writeln!(
                out,
                "<li><b>{}:</b> {}</li>",
                title_words(&warning.code),
                escaped(&warning.text)
            );
        }
        out.push_str("</ul>\n");
    }
}
