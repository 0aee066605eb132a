// The pattern: block, ease, sleeve, lengths, allowance.

import { bare, notRead, parse, title } from "./lengths.js";
import { button, choice, field, h, select } from "./parts.js";
import * as report from "./report.js";

const PLACES = { bust: "Bust", waist: "Waist", hip: "Hip", back_width: "Back width", upper_arm: "Upper arm", wrist: "Wrist", armscye_depth: "Armscye depth" };

export class PatternPanel {
  constructor(app) {
    this.app = app;
    this.wrong = {};
  }

  // A length that may be left open.
  length(id, label, mm, usual, set, hint) {
    const { unit } = this.app.work.now;
    return field(id, label, mm === null || mm === undefined ? "" : bare(mm, unit), {
      unit, hint, wrong: this.wrong[id], inputmode: "decimal",
      placeholder: usual === null || usual === undefined ? "usual" : bare(usual, unit),
      change: (text) => {
        const value = text.trim() === "" ? null : parse(text, unit);
        this.wrong[id] = value === undefined ? notRead(text, "mm") : undefined;
        if (value === undefined) this.app.fillDesk();
        else set(value);
      },
    });
  }

  desk() {
    const { work, about } = this.app;
    const now = work.now;
    const block = about.blocks.find((one) => one.name === now.block);
    const change = (fields) => work.change(fields);
    const ease = Object.fromEntries(block.ease)[now.fit];
    const sleeved = block.has_armscye && now.sleeve !== "none";
    const used = { bust: block.has_armscye, waist: true, hip: block.has_hem, back_width: block.has_armscye, armscye_depth: block.has_armscye, upper_arm: sleeved, wrist: now.sleeve === "long" && sleeved };
    return [
      h("div", { class: "row" },
        field("job-title", "Title, written on every piece", now.title, {
          input: (text) => work.change({ title: text }, { key: "title", light: true }), maxlength: 120, placeholder: "Untitled",
        })),
      now.own
        ? this.ownBlock()
        : [
          choice("block", "Block", about.blocks.map((one) => [one.name, title(one.name)]), now.block, (name) => change({ block: name })),
          h("div", { class: "row" }, button("A block of your own …", () => this.openBlock(), { id: "own-block" })),
          choice("fit", "Ease", [["close", "Close"], ["regular", "Regular"], ["loose", "Loose"]], now.fit, (fit) => change({ fit })),
          block.has_armscye ? choice("sleeve", "Sleeve", [["none", "None"], ["short", "Short"], ["long", "Long"]], now.sleeve, (sleeve) => change({ sleeve })) : null,
          h("div", { class: "fields" },
            block.has_hem ? this.length("length", "Length, waist to hem", now.length, null, (length) => change({ length })) : null,
            sleeved ? this.length("cap-ease", "Ease of the sleeve cap", now.cap_ease, null, (cap_ease) => change({ cap_ease })) : null),
          block.one_piece ? h("div", { class: "fields" },
            select("darts", "Waist darts", [["", "As usual"], ["true", "With darts"], ["false", "Without"]], now.waist_darts === null ? "" : String(now.waist_darts),
              (value) => change({ waist_darts: value === "" ? null : value === "true" })),
            select("side", "Side seam", [["", "As usual"], ["shaped", "Shaped"], ["straight", "Straight"]], now.side ?? "",
              (value) => change({ side: value || null }))) : null,
          h("details", { id: "ease-by-place", open: this.easeOpen, ontoggle: (event) => { this.easeOpen = event.target.open; } },
            h("summary", {}, "Ease by place"),
            h("div", { class: "fields" }, Object.entries(PLACES).filter(([place]) => used[place]).map(([place, label]) =>
              this.length(`ease-${place}`, label, now.ease[place] ?? null, ease[place], (mm) => {
                const places = { ...now.ease };
                if (mm === null) delete places[place];
                else places[place] = mm;
                change({ ease: places });
              })))),
        ],
      this.allowance(),
      h("div", { class: "fields" },
        field("size", "Size, written on the pieces", now.size, { change: (size) => change({ size }), maxlength: 40 }),
        field("date", "Date, written on the pieces", now.date, { change: (date) => change({ date }), maxlength: 40 })),
    ];
  }

  ownBlock() {
    const { work, about } = this.app;
    const { own } = work.now;
    return [
      h("p", { class: "doubt" }, `The block is your own, ${own.file}. Ease and sleeve are its own too; alter it under Fitting.`),
      own.file.endsWith(".svg") ? select("own-kind", "It is drawn as a", about.blocks.map((one) => [one.name, title(one.name)]), own.kind,
        (kind) => work.change({ own: { ...own, kind } })) : null,
      h("div", { class: "row" },
        button("Another block of your own …", () => this.openBlock(), { id: "own-block" }),
        button("Draft a block again", () => work.change({ own: null, files: {} }), { id: "draft-again" })),
    ];
  }

  // A pattern document, or a drawing in true size whose paths are named by piece and edge.
  openBlock() {
    const { work } = this.app;
    this.app.pick((files) => {
      const [name, text] = Object.entries(files).find(([file]) => /\.(json|svg)$/i.test(file)) ?? [];
      if (!name) return this.app.fail({ errors: [{ text: "no block was chosen", cure: "choose a pattern.json, or a drawing as SVG with named paths" }] });
      const file = `own-block.${/svg$/i.test(name) ? "svg" : "json"}`;
      const own = file.endsWith(".svg") ? { file, kind: work.now.block } : { file };
      work.change({ own, files: { [file]: text } });
      this.app.say(`${name} is the block.`);
    });
  }

  allowance() {
    const { work, about } = this.app;
    const { allowance } = work.now;
    const kind = allowance === null ? "none" : allowance === "usual" ? "usual" : typeof allowance === "number" ? "round" : "place";
    const widths = typeof allowance === "object" && allowance !== null ? allowance : { default: typeof allowance === "number" ? allowance : 15 };
    const choose = { none: null, usual: "usual", round: widths.default ?? 15, place: widths };
    const set = (place, mm) => {
      const all = { ...widths };
      if (mm === null && place !== "default") delete all[place];
      else all[place] = mm ?? 15;
      work.change({ allowance: all });
    };
    return [
      choice("allowance", "Seam allowance", [["none", "None"], ["usual", "Usual"], ["round", "All round"], ["place", "By place"]], kind,
        (value) => work.change({ allowance: choose[value] })),
      kind === "round" ? h("div", { class: "fields" }, this.length("allowance-width", "Width", allowance, 15, (mm) => work.change({ allowance: mm ?? 15 }))) : null,
      kind === "place" ? h("div", { class: "fields" }, ["default", ...about.allowance_places].map((place) =>
        this.length(`allowance-${place}`, place === "default" ? "Everywhere else" : title(place), widths[place] ?? null, widths.default ?? 15, (mm) => set(place, mm)))) : null,
    ];
  }

  table() {
    const { drafted, work } = this.app;
    if (!drafted) return [];
    const { unit } = work.now;
    return [report.warnings(this.app.report), h("div", { class: "beside" }, report.girths(this.app.report, unit), report.seams(this.app.report, unit))];
  }
}

