//! The page `toile.html`: toiles beside one another, with the figures.

use super::toile_case::picture_name;
use super::toile_report::ToileReport;
use crate::render::fitting::markup::escaped;
use crate::toile::Shown;
use std::fmt::Write as _;

const STYLE: &str = include_str!("toile.css");

/// The page of a report; its pictures are files beside it.
pub(super) fn page(report: &ToileReport) -> String {
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
    for shown in Shown::ALL {
        pictures(&mut out, report, shown);
    }
    out.push_str("</main>\n</body>\n</html>\n");
    out
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
            "<p>Front, left side, back, and from behind the left side. Full lines are seams, darts and \
             hems; the blue dashes are the waist line of the pattern, the grey ones its other levels.</p>\n",
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
    for case in &report.cases {
        let words = escaped(case.words);
        let _ = write!(
            out,
            "<figure>\n<figcaption>{words}</figcaption>\n<img src=\"{}\" alt=\"{words}: {} from the \
             front, the left side, the back and behind the left side\"/>\n</figure>\n",
            picture_name(case.name, shown),
            alternative(shown),
        );
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
