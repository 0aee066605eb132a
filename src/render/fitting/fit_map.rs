//! The fit map on the page: the map over the pieces, its figures, and the body that it is of.

use super::Fitting;
use super::form_figure::form_figure;
use super::map_figure::{map_figures, map_legend, signed};
use super::markup::{Cells, escaped, length, table, title_words};
use crate::form::Form;
use crate::units::{Unit, rounded, speak};
use std::fmt::Write as _;

impl Fitting<'_> {
    /// The section of the map, if there is one.
    pub(super) fn fit_map_section(&self, out: &mut String) {
        let Some(shown) = self.fit_map else { return };
        let unit = self.body.unit();
        // Writing to a string cannot fail.
        let _ = writeln!(
            out,
            "<p>Threads of the cloth down to the waist and the hip beside taut threads on the body of {}. {}</p>",
            escaped(shown.wearer),
            escaped(shown.caution)
        );
        out.push_str("<ul class=\"warnings\">\n");
        for advice in &shown.map.advice {
            let _ = writeln!(
                out,
                "<li>{}</li>",
                escaped(&speak(&advice.to_string(), unit))
            );
        }
        out.push_str("</ul>\n");
        out.push_str(&map_legend(unit));
        out.push_str("<div class=\"pieces\">\n");
        for figure in map_figures(self.after, shown.map, unit) {
            let _ = writeln!(
                out,
                "<figure class=\"piece\" style=\"--width:{}\">\n{}<figcaption><b>{}</b></figcaption>\n</figure>",
                figure.width,
                figure.svg,
                title_words(&figure.piece)
            );
        }
        out.push_str("</div>\n");
        let rows: Vec<Vec<String>> = shown
            .map
            .stations
            .iter()
            .map(|station| {
                vec![
                    format!(
                        "{} {}, {}",
                        title_words(&station.piece),
                        station.place.name(),
                        station.band.name()
                    ),
                    length(station.pattern, unit),
                    length(station.body, unit),
                    signed(station.excess(), unit),
                ]
            })
            .collect();
        let heads = ["Thread", "Pattern", "Body", "Excess"];
        table(out, Cells::Numbers, "Threads of the cloth", &heads, &rows);
        let rows: Vec<Vec<String>> = shown
            .map
            .girths
            .iter()
            .map(|girth| {
                vec![
                    title_words(&girth.name),
                    length(girth.finished, unit),
                    length(girth.body, unit),
                    signed(girth.ease(), unit),
                    signed(girth.excess(), unit),
                ]
            })
            .collect();
        let heads = ["Level", "Finished", "Body", "Ease", "More than meant"];
        table(out, Cells::Numbers, "Round the body", &heads, &rows);
        body_in_the_round(out, shown.form, unit);
    }
}

/// The form: a drawing, what it reproduces, and how far it is from other women.
fn body_in_the_round(out: &mut String, form: &Form, unit: Unit) {
    out.push_str("<h3>The body in the round</h3>\n");
    let _ = writeln!(
        out,
        "<figure class=\"form\">\n{}</figure>",
        form_figure(form)
    );
    for sign in form.posture() {
        let _ = writeln!(out, "<p>{}</p>", escaped(&speak(&sign.to_string(), unit)));
    }
    let rows: Vec<Vec<String>> = form
        .reproduced()
        .iter()
        .map(|one| {
            vec![
                title_words(one.of.name()),
                length(one.given, unit),
                length(one.found, unit),
                format!("{} mm", rounded(one.miss(), 2)),
            ]
        })
        .collect();
    let heads = ["Measurement", "Given", "Found", "Miss"];
    table(
        out,
        Cells::Numbers,
        "As a tape finds them on it; the nape above the waist",
        &heads,
        &rows,
    );
    let rows: Vec<Vec<String>> = form
        .dimensions()
        .iter()
        .map(|one| {
            let is_length = one.of.is_length();
            let shown = |value: f64| {
                if is_length {
                    length(value, unit)
                } else {
                    rounded(value, 2).to_string()
                }
            };
            vec![
                title_words(one.of.name()),
                shown(one.value),
                shown(one.expected),
                format!("{:+.1}", rounded(one.spreads(), 1) + 0.0),
            ]
        })
        .collect();
    let heads = ["Dimension", "Found", "Expected", "Standard deviations"];
    let caption = "What no tape gives, beside what the survey expects";
    table(out, Cells::Numbers, caption, &heads, &rows);
}
