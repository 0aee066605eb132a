//! The page `toile.html`: toiles beside one another, with the figures.

use super::toile_report::ToileReport;
use crate::job::making::toile_case::picture_name;
use crate::job::making::toile_models::Models;
use crate::render::fitting::markup::escaped;
use crate::toile::Shown;
use std::fmt::Write as _;

const STYLE: &str = include_str!("toile.css");
const SCRIPT: &str = include_str!("toile_turn.js");

/// The views of a picture from left to right: what they are called, and the turn that shows the same, in
/// degrees.
const VIEWS: [(&str, u32); 4] = [
    ("Front", 0),
    ("Left side", 90),
    ("Back", 180),
    ("Behind the left side", 140),
];

/// The page of a report; its pictures are files beside it, its models are in it.
pub(in crate::job) fn page(report: &ToileReport, models: &Models<'_>) -> String {
    let title = escaped(&report.title);
    let wearer = report
        .wearer
        .as_deref()
        .map_or_else(String::new, |w| format!(", on {}", escaped(w)));
    let mut out = String::new();
    // Writing to a string cannot fail.
    let _ = write!(
        out,
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n\
         <title>{title}: toile on screen</title>\n<style>\n{STYLE}</style>\n</head>\n<body>\n\
         <header>\n<p class=\"kind\">Toile on screen: a picture</p>\n<h1>{title}{wearer}</h1>\n\
         <p>{}</p>\n</header>\n<main>\n",
        escaped(&report.sewn_words())
    );
    list(&mut out, "trust", "Before you trust it", &report.cautions);
    if !report.notes.is_empty() {
        list(&mut out, "notes", "Notes", &report.notes);
    }
    figures(&mut out, report);
    turning(&mut out, report);
    for shown in Shown::ALL {
        pictures(&mut out, report, shown);
    }
    let _ = write!(
        out,
        "</main>\n<script type=\"application/json\" id=\"model\">{}</script>\n\
         <script>\n{SCRIPT}</script>\n</body>\n</html>\n",
        models.text()
    );
    out
}

/// The toiles to be turned, all together.
fn turning(out: &mut String, report: &ToileReport) {
    let _ = write!(
        out,
        "<section id=\"turning\" aria-labelledby=\"turn-heading\">\n\
         <h2 id=\"turn-heading\">Turn it</h2>\n<p class=\"turn\"><label for=\"turn\">Turn all</label> \
         <input type=\"range\" id=\"turn\" min=\"0\" max=\"359\" value=\"140\"/>"
    );
    for (view, degrees) in VIEWS {
        let _ = write!(
            out,
            " <button type=\"button\" data-turn=\"{degrees}\">{view}</button>"
        );
    }
    out.push_str("</p>\n");
    open_cases(out, report);
    for case in &report.cases {
        let words = escaped(case.words);
        let _ = writeln!(
            out,
            "<figure><figcaption>{words}</figcaption><canvas width=\"600\" height=\"800\" role=\"img\" \
             aria-label=\"{words}: the cloth on the form, turned as the slider says\"></canvas></figure>"
        );
    }
    out.push_str("</div>\n</section>\n");
}

/// Opens a row that has the cases beside one another.
fn open_cases(out: &mut String, report: &ToileReport) {
    let _ = writeln!(out, "<div class=\"cases of-{}\">", report.cases.len());
}

fn list(out: &mut String, id: &str, heading: &str, lines: &[impl AsRef<str>]) {
    let _ = write!(
        out,
        "<section aria-labelledby=\"{id}\">\n<h2 id=\"{id}\">{heading}</h2>\n<ul>\n"
    );
    for line in lines {
        let _ = writeln!(out, "<li>{}</li>", escaped(line.as_ref()));
    }
    out.push_str("</ul>\n</section>\n");
}

fn figures(out: &mut String, report: &ToileReport) {
    out.push_str("<section aria-labelledby=\"figures\">\n<h2 id=\"figures\">Figures</h2>\n<table>\n<thead><tr><td></td>");
    for case in &report.cases {
        let _ = write!(out, "<th scope=\"col\">{}</th>", escaped(case.words));
    }
    out.push_str("</tr></thead>\n<tbody>\n");
    for (what, values) in report.rows() {
        let _ = write!(out, "<tr><th scope=\"row\">{}</th>", escaped(&what));
        for value in values {
            let _ = write!(out, "<td>{}</td>", escaped(&value));
        }
        out.push_str("</tr>\n");
    }
    out.push_str("</tbody>\n</table>\n");
    out.push_str(
        "<p>Slack is by how much the cloth from neckline to hip is longer than a thread drawn taut over \
         it: folds, and what the cloth sinks into the hollow of the back. It is averaged over the middle \
         four tenths of the back. Compare the columns, not the number alone.</p>\n</section>\n",
    );
}

fn pictures(out: &mut String, report: &ToileReport, shown: Shown) {
    let (id, heading) = (shown.name(), heading(shown));
    let _ = write!(
        out,
        "<section aria-labelledby=\"{id}\">\n<h2 id=\"{id}\">{heading}</h2>\n"
    );
    if shown == Shown::Cloth {
        out.push_str(
            "<p>Full lines are seams, darts and hems; the blue dashes are the waist line of the pattern, \
             the grey ones its other levels. All pictures have one scale.</p>\n",
        );
    } else {
        out.push_str("<ul class=\"legend\">\n");
        for ([r, g, b], words) in shown.bands() {
            let _ = writeln!(
                out,
                "<li><span style=\"background:#{r:02x}{g:02x}{b:02x}\"></span>{words}</li>"
            );
        }
        out.push_str("</ul>\n");
    }
    for (number, (view, _)) in VIEWS.into_iter().enumerate() {
        let _ = writeln!(out, "<h3>{view}</h3>");
        open_cases(out, report);
        for case in &report.cases {
            let words = escaped(case.words);
            let _ = writeln!(
                out,
                "<figure><figcaption>{words}</figcaption><div class=\"view view-{number}\"><img src=\"{}\" \
                 alt=\"{words}, {}: {}\"/></div></figure>",
                picture_name(case.name, shown),
                view.to_lowercase(),
                alternative(shown),
            );
        }
        out.push_str("</div>\n");
    }
    out.push_str("</section>\n");
}

const fn heading(shown: Shown) -> &'static str {
    match shown {
        Shown::Cloth => "How it hangs",
        Shown::Strain => "Where it is tight: stretch of the threads",
        Shown::Gap => "Where it stands off the body",
    }
}

const fn alternative(shown: Shown) -> &'static str {
    match shown {
        Shown::Cloth => "the cloth",
        Shown::Strain => "a map of the stretch",
        Shown::Gap => "a map of the distance from the body",
    }
}
