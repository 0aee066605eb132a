// What there is to say about a pattern: girths, seams, accounts, ways, warnings.

import { length, measure, title, words } from "./lengths.js";
import { h, table } from "./parts.js";

export function warnings(report) {
  if (!report) return null;
  return h("section", { class: "report" }, h("h2", {}, "Warnings"),
    report.warnings.length === 0 ? h("p", {}, "There are none.")
      : h("ul", { class: "warnings" }, report.warnings.map((warning) =>
        h("li", {}, h("b", {}, `${title(warning.code)}: `), warning.text))));
}

export function girths(report, unit) {
  if (!report) return null;
  return h("section", { class: "report" }, h("h2", {}, "Finished measurements"),
    table("Body, ease and the finished garment", ["", "body", "ease", "finished"], report.girths.map((girth) =>
      [title(girth.name), length(girth.body, unit), measure(girth.ease, "mm", unit, true), length(girth.finished, unit)])));
}

export function seams(report, unit) {
  if (!report) return null;
  const edges = (names, mm) => `${names.map(words).join(" + ")}, ${length(mm, unit)}`;
  return h("section", { class: "report" }, h("h2", {}, "Seams and darts"),
    table("What is sewn to what, darts closed", ["seam", "one side", "other side", "eased in"], report.seams.map((seam) =>
      [title(seam.name), edges(seam.a, seam.a_length), edges(seam.b, seam.b_length), seam.ease > 0 ? length(seam.ease, unit) : "no"]), "facts"),
    report.darts.length === 0 ? null : table("Darts", ["dart", "on", "intake", "angle"], report.darts.map((dart) =>
      [title(`${dart.piece} ${dart.name}`), words(dart.edge ?? "inside the piece"), length(dart.intake, unit), measure(dart.angle, "deg", unit)])));
}

// The account of a step: what it changed and what it kept.
export function account(report, index, unit) {
  const own = report?.account[index];
  if (!own) return null;
  const by = own.amount === null ? "" : ` by ${measure(own.amount, own.unit, unit)}`;
  return h("section", { class: "report account" }, h("h2", {}, `${title(own.alteration)}${by}`),
    own.changes.length === 0 ? h("p", {}, "Nothing changed.")
      : table("What it changed", ["", "before", "after", "difference"], own.changes.map((change) => [words(change.what),
        measure(change.before, change.unit, unit), measure(change.after, change.unit, unit),
        change.difference === null ? "" : measure(change.difference, change.unit, unit, true)])),
    own.kept.length === 0 ? null : h("p", { class: "kept" }, h("b", {}, "Kept: "), own.kept.map(words).join(", ")));
}

// The ways of a step side by side, to choose from.
export function ways(report, index, unit, choose) {
  const methods = report?.methods.find((one) => one.step === index + 1);
  if (!methods) return null;
  const mm = (value) => value === null ? "–" : measure(value, "mm", unit, true);
  const rows = methods.rows.map((row) => {
    const pick = h("label", { class: "pick" }, h("input", {
      type: "radio", name: "way", id: `way-${row.hinge}`, checked: row.chosen, disabled: row.refused !== null,
      onchange: () => choose(row.hinge),
    }), h("span", {}, words(row.hinge)));
    const figures = row.figures;
    const cells = figures
      ? [pick, `${measure(figures.slope_before, "deg", unit)} to ${measure(figures.slope_after, "deg", unit)}`,
        mm(figures.armscye), mm(figures.fold_gain), mm(figures.sleeve_cap),
        figures.smallest_stretch === null ? "–" : `${figures.smallest_stretch.toFixed(2)} to ${figures.largest_stretch.toFixed(2)}`]
      : [pick, row.refused, "", "", "", ""];
    cells.mark = row.chosen ? "chosen" : null;
    return cells;
  });
  return h("section", { class: "report" }, h("h2", {}, "Ways to make it"),
    table("Each way, and what it would do", ["way", "shoulder slope", "armscye", "fold", "cap", "stretch"], rows));
}
