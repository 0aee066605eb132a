// The wearer: every measurement, what is taken and what is estimated, and where the tape runs.

import { title, words } from "./lengths.js";
import { blob, button, download, field, h, problems, refill } from "./parts.js";
import { setOf } from "./state.js";

const GROUPS = [
  ["Needed for any pattern", ["height", "bust_girth", "waist_girth", "hip_girth"]],
  ["Lengths of the trunk", ["back_waist_length", "front_waist_length", "centre_front_waist_length", "scye_depth", "neck_to_bust_point", "waist_to_hip", "waist_to_knee"]],
  ["Neck and shoulders", ["neck_base_girth", "shoulder_length", "shoulder_slope"]],
  ["Chest and widths", ["upper_chest_girth", "underbust_girth", "bust_point_width", "back_width", "front_width"]],
  ["Arms", ["arm_length", "upper_arm_girth", "elbow_girth", "wrist_girth", "hand_girth", "armscye_girth"]],
  ["Heights, depths and posture", ["nape_height", "waist_height", "back_hollow", "waist_plumb", "nape_plumb", "bust_depth", "seat_depth", "head_girth"]],
];

export class Wearer {
  constructor(app) {
    this.app = app;
    this.focus = "height";
  }

  groups() {
    const known = this.app.about.measurements.map((one) => one.name);
    const named = GROUPS.flatMap(([, names]) => names);
    const others = known.filter((name) => !named.includes(name));
    return GROUPS.map(([label, names], index) =>
      [label, names.filter((name) => known.includes(name)).concat(index === GROUPS.length - 1 ? others : [])]);
  }

  entry(name) {
    return this.app.about.measurements.find((one) => one.name === name);
  }

  // What stands in a field: as it was typed, or converted where the unit is another now.
  shown(name) {
    const { taken, unit } = this.app.work.now;
    const text = taken[name] ?? "";
    const own = /^(.*?)\s*(mm|cm|in)$/.exec(text);
    if (!own) return text;
    if (own[2] === unit) return own[1];
    return this.row(name)?.state === "taken" ? this.row(name).shown : text;
  }

  row(name) {
    return this.app.known?.rows.find((row) => row.name === name);
  }

  desk() {
    const { work } = this.app;
    return [
      h("div", { class: "row" },
        field("wearer-name", "Name", work.now.name, {
          input: (name) => work.change({ name }, { key: "name", light: true }), maxlength: 60,
        }),
        button("Form to print", () => this.form(), { class: "quiet", title: "All measurements with pictures and lines to write on" })),
      h("p", { class: "hint" }, "Four are needed. What you do not measure is estimated and shown in grey with its spread; what you measure is used as it is."),
      this.groups().map(([label, names]) => h("fieldset", { class: "measures" }, h("legend", {}, label),
        names.map((name) => this.measure(name)))),
    ];
  }

  measure(name) {
    const unit = this.entry(name).unit === "deg" ? "°" : this.app.work.now.unit;
    const id = `m-${name}`;
    const input = h("input", {
      id, type: "text", inputmode: unit === "in" ? "text" : "decimal", autocomplete: "off", spellcheck: "false",
      value: this.shown(name), "aria-describedby": `${id}-note`, required: this.entry(name).required,
      oninput: (event) => this.type(name, event.target.value),
      onfocus: () => this.look(name),
    });
    return h("div", { class: "measure", id: `${id}-row` },
      h("label", { for: id }, title(name)),
      h("span", { class: "entry" }, input, h("span", { class: "unit" }, unit)),
      h("span", { class: "spread", id: `${id}-spread`, "aria-hidden": "true" }),
      h("div", { class: "note", id: `${id}-note` }));
  }

  type(name, text) {
    const { work } = this.app;
    const taken = { ...work.now.taken };
    const plain = text.trim();
    const bare = this.entry(name).unit === "deg" || /[a-z"″]\s*$/i.test(plain);
    if (plain === "") delete taken[name];
    else taken[name] = bare ? plain.replace(/["″]$/, " in") : `${plain} ${work.now.unit}`;
    work.change({ taken }, { key: `m-${name}`, light: true });
  }

  look(name) {
    if (this.focus === name) return;
    this.focus = name;
    this.app.measureAgain();
  }

  // What is known now, beside the fields.
  refresh() {
    for (const row of this.app.known?.rows ?? []) {
      const id = `m-${row.name}`;
      const input = document.getElementById(id);
      if (!input) continue;
      const estimated = ["estimated", "likely"].includes(row.state);
      input.placeholder = estimated ? row.shown : "";
      input.setAttribute("aria-invalid", row.state === "wrong");
      if (document.activeElement !== input) input.value = this.shown(row.name);
      document.getElementById(`${id}-row`).className = `measure ${row.state}${row.doubts ? " doubtful" : ""}`;
      document.getElementById(`${id}-spread`).textContent = estimated ? `± ${row.spread}` : row.state === "unknown" ? "optional" : "";
      const said = row.error ? [row.error] : row.doubts ?? [];
      const spoken = estimated ? h("span", { class: "sr" }, `${row.state === "likely" ? "Needed; probably" : "Estimated"} ${row.shown}, give or take ${row.spread}`) : null;
      refill(document.getElementById(`${id}-note`), said.map((text) => h("p", { class: row.error ? "wrong" : "doubt" }, text)), spoken);
    }
    this.app.fillTable();
  }

  table() {
    const { known } = this.app;
    const entry = this.entry(this.focus);
    const figure = h("div", { class: "figure" });
    if (known?.figure) figure.append(document.importNode(new DOMParser().parseFromString(known.figure, "image/svg+xml").documentElement, true));
    const row = this.row(this.focus);
    const value = row?.state === "taken" ? `${row.shown} ${entry.unit === "deg" ? "°" : this.app.work.now.unit}, measured`
      : row?.shown ? `${row.shown} ± ${row.spread}, ${row.state === "likely" ? "probably; please measure it" : "estimated"}` : "";
    return [
      h("div", { class: "figure-page" }, figure,
        h("div", { class: "figure-words", "aria-live": "polite" },
          h("p", { class: "kind" }, known?.stance ? `Seen from the ${known.stance}` : ""),
          h("h2", {}, title(this.focus)), h("p", { class: "value" }, value), h("p", {}, entry.definition),
          h("p", { class: "hint" }, `For ${entry.needed_by.map(words).join(", ")}.`),
          (known?.notes ?? []).map((text) => h("p", { class: "doubt" }, text)),
          known?.errors?.length ? problems(known.errors) : null)),
    ];
  }

  async form() {
    const { work, link } = this.app;
    const answer = await link.ask({ ask: "form", set: setOf(work.now), unit: work.now.unit, paper: work.now.print.paper ?? "a4" });
    if (answer.status !== "ok") return this.app.fail(answer);
    for (const file of answer.files) download(file.name, blob(file), file.type);
  }
}
