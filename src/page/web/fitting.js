// The fitting: from what is seen on a toile to steps, each with its amount, its account and its ways.

import { bare, counted, length, measure, notRead, parse, step as stepSize, title, words } from "./lengths.js";
import { button, check, choice, field, h, select } from "./parts.js";
import * as report from "./report.js";
import { isDocument, stepOf, wholeSet } from "./state.js";

const PLACES = ["neck", "shoulder", "armscye", "sleeve", "bust", "back", "waist", "hip"];

// A setting by its key with points, `into.0.to`.
function get(settings, key) {
  return key.split(".").reduce((at, part) => at?.[part], settings);
}

function put(settings, key, value) {
  const [head, ...rest] = key.split(".");
  const copy = Array.isArray(settings) || /^\d+$/.test(head) ? [...(settings ?? [])] : { ...settings };
  if (rest.length) copy[head] = put(copy[head], rest.join("."), value);
  else if (value === undefined) delete copy[head];
  else copy[head] = value;
  return copy;
}

export class Fitting {
  constructor(app) {
    this.app = app;
    this.looking = false;
    this.words = "";
    this.place = "all";
    this.sign = null;
    this.seen = { amount: "", side: "both" };
    this.chosen = null;
  }

  entry(name) {
    return this.app.about.alterations.find((one) => one.name === name);
  }

  // The place of a step among those that are on, counted from nought; -1 where it is off.
  place_of(step) {
    return this.app.work.now.steps.filter((one) => !one.off).indexOf(step);
  }

  desk() {
    const { steps } = this.app.work.now;
    return [
      this.seenPart(),
      h("section", { class: "steps", "aria-labelledby": "steps-head" }, h("h2", { id: "steps-head" }, "Steps"),
        steps.length === 0 ? h("p", { class: "hint" }, "None yet. Begin with what the toile shows, or add a step by name.") : null,
        h("ol", { class: "cards" }, steps.map((step, index) => this.card(step, index))),
        this.byName()),
      this.wearerPart(),
    ];
  }

  // What is seen on the toile.

  seenPart() {
    return h("details", { class: "seen", id: "seen", open: this.looking, ontoggle: (event) => this.openSigns(event.target.open) },
      h("summary", {}, "What does the toile show?"),
      this.looking ? this.sign ? this.signPart() : this.signList() : null);
  }

  openSigns(open) {
    if (open === this.looking) return;
    this.looking = open;
    if (open) this.findSigns();
    else this.app.fillDesk();
  }

  async findSigns() {
    const asked = this.words;
    const answer = await this.app.link.ask({ ask: "signs", words: asked, unit: this.app.work.now.unit });
    if (asked !== this.words || answer.status !== "ok") return;
    this.signs = answer.signs;
    this.app.fillDesk();
  }

  signList() {
    const shown = (this.signs ?? []).filter((sign) => this.place === "all" || sign.place === this.place);
    const here = this.app.about.blocks.find((one) => one.name === this.app.work.now.block);
    const suited = shown.filter((sign) => this.entry(sign.alteration)?.blocks.includes(here.name));
    return [
      field("sign-words", "In your words", this.words, {
        placeholder: "folds back waist", input: (text) => {
          this.words = text;
          this.findSigns();
        },
      }),
      choice("sign-place", "Where", [["all", "Anywhere"], ...PLACES.map((place) => [place, title(place)])], this.place, (place) => {
        this.place = place;
        this.app.fillDesk();
      }),
      h("p", { class: "hint", role: "status" }, suited.length ? counted(suited.length, "sign") : "No sign matches. Try fewer words, or another place."),
      h("ul", { class: "signs" }, suited.map((sign) => h("li", {}, h("button", {
        type: "button", id: `sign-${sign.name}`, onclick: () => {
          this.sign = sign;
          this.seen = { amount: "", side: "both" };
          this.app.fillDesk();
          document.getElementById("sign-amount")?.focus();
        },
      }, picture(sign), h("span", {}, h("b", {}, title(sign.at)), " ", sign.shows))))),
    ];
  }

  signPart() {
    const { sign } = this;
    const { unit } = this.app.work.now;
    const line = (name, text) => [h("dt", {}, name), h("dd", {}, text)];
    return h("div", { class: "sign" },
      h("div", { class: "sign-head" }, picture(sign), h("p", {}, h("b", {}, title(sign.at)), h("br", {}), sign.shows)),
      h("dl", {}, line("Cause", sign.cause), line("Rule out first", sign.rule_out), line("Measure", sign.measure),
        line("Step", `${words(sign.alteration)}, usually ${sign.usual_text} ${sign.found}`), line("Changes elsewhere", sign.elsewhere), line("Source", sign.source)),
      field("sign-amount", title(sign.found), this.seen.amount, {
        unit, inputmode: "decimal", wrong: this.seen.wrong, input: (text) => { this.seen.amount = text; },
        onkeydown: (event) => event.key === "Enter" && this.addSeen(),
      }),
      choice("sign-side", "On", [["both", "Both sides"], ["left", "Her left"], ["right", "Her right"]], this.seen.side, (side) => { this.seen.side = side; }),
      h("div", { class: "row" }, button("Add the step", () => this.addSeen(), { class: "main" }),
        button("Other signs", () => {
          this.sign = null;
          this.app.fillDesk();
        })));
  }

  addSeen() {
    const { sign } = this;
    const mm = parse(this.seen.amount, this.app.work.now.unit);
    if (mm === undefined || mm < 1 || mm > 100) {
      this.seen.wrong = `Write what was ${sign.found}: ${length(1, this.app.work.now.unit)} to ${length(100, this.app.work.now.unit)}.`;
      this.app.fillDesk();
      return;
    }
    const settings = { ...sign.settings, [sign.key]: Math.round(mm * sign.factor * 1000) / 1000 };
    if (this.seen.side !== "both") settings.side = this.seen.side;
    this.looking = false;
    this.sign = null;
    this.add(stepOf(sign.alteration, settings));
  }

  add(step) {
    this.chosen = step.id;
    this.app.work.change({ steps: [...this.app.work.now.steps, step] });
    document.getElementById(`amount-${step.id}`)?.focus();
  }

  byName() {
    const { block } = this.app.work.now;
    const suited = this.app.about.alterations.filter((one) => one.blocks.includes(block) || this.app.work.now.own);
    const known = suited.find((one) => one.name === this.named) ?? suited[0];
    return h("div", { class: "by-name" },
      select("step-name", "Add a step by name", suited.map((one) => [one.name, title(one.name)]), known?.name, (name) => {
        this.named = name;
        this.app.fillDesk();
      }),
      h("p", { class: "hint" }, known ? `${known.says}.` : ""),
      button("Add", () => this.add(stepOf(known.name, this.usual(known))), { id: "add-step" }));
  }

  // Settings to begin with.
  usual(entry) {
    let settings = {};
    if (entry.key) settings[entry.key] = entry.amount;
    for (const setting of entry.settings) {
      if (setting.holds === "truth") continue;
      if (setting.holds === "length" || setting.holds === "word" && setting.key !== "at" && setting.key !== "direction") continue;
      const value = setting.holds === "share" ? Number(setting.usual) : setting.usual;
      settings = put(settings, setting.key, value);
    }
    return settings;
  }

  // A step.

  card(step, index) {
    const { work, drafted } = this.app;
    const { steps } = work.now;
    const entry = this.entry(step.name);
    const at = this.place_of(step);
    const refused = drafted?.refused && at === drafted.refused.step - 1 ? drafted.refused : null;
    const { at: where, direction, side } = step.settings;
    const aside = { left: "her left", right: "her right" }[side];
    const label = [title(step.name), where, direction, aside].filter(Boolean).join(", ");
    const act = (symbol, name, press, more) => button(symbol, press, { "aria-label": `${name}: ${label}, step ${index + 1}`, title: name, ...more });
    const move = (by) => {
      const order = [...steps];
      order.splice(index + by, 0, ...order.splice(index, 1));
      work.change({ steps: order });
      document.getElementById(`up-${step.id}`)?.focus();
    };
    return h("li", { class: `card${step.off ? " off" : ""}${refused ? " refused" : ""}${step.id === this.chosen ? " chosen" : ""}`, onfocusin: () => this.choose(step.id) },
      h("div", { class: "card-head" },
        check(`on-${step.id}`, h("span", { class: "number" }, `${index + 1}. ${label}`), !step.off, (on) => work.changeStep(step.id, { off: !on })),
        h("span", { class: "keys" },
          act("↑", "Earlier", () => move(-1), { id: `up-${step.id}`, disabled: index === 0 }),
          act("↓", "Later", () => move(1), { id: `down-${step.id}`, disabled: index === steps.length - 1 }),
          act("×", "Remove", () => work.change({ steps: steps.filter((one) => one !== step) })))),
      entry.key ? this.amount(step, entry, label) : null,
      refused ? h("p", { class: "wrong", role: "alert" }, refused.problem.text, refused.most === undefined ? null
        : button(`Take ${measure(Math.trunc(refused.most * 10) / 10, entry.unit, work.now.unit)}`, () => this.set(step, entry, Math.trunc(refused.most * 10) / 10), { class: "quiet" }),
      refused.before ? button(`Move before step ${refused.before}`, () => this.moveBefore(step, refused.before), { class: "quiet" }) : null) : null,
      h("details", { id: `more-${step.id}`, open: this.more === step.id, ontoggle: (event) => {
        if (event.target.open) this.more = step.id;
        else if (this.more === step.id) this.more = null;
      } },
      h("summary", {}, "Side and settings", h("span", { class: "sr" }, ` of ${label}, step ${index + 1}`)), this.settings(step, entry),
      h("p", { class: "hint" }, `${title(entry.says)}. Keeps ${entry.keeps}.`)));
  }

  moveBefore(step, number) {
    const { work } = this.app;
    const on = work.now.steps.filter((one) => !one.off);
    const others = work.now.steps.filter((one) => one !== step);
    others.splice(others.indexOf(on[number - 1]), 0, step);
    work.change({ steps: others });
  }

  choose(id) {
    if (this.chosen === id) return;
    this.chosen = id;
    for (const card of document.querySelectorAll(".card.chosen")) card.classList.remove("chosen");
    document.getElementById(`on-${id}`)?.closest(".card")?.classList.add("chosen");
    this.app.fillTable();
  }

  // The amount of a step as it is, also where it follows from a target.
  now(step, entry) {
    const given = step.settings[entry.key];
    if (typeof given === "number") return given;
    const made = this.app.drafted?.amounts[this.place_of(step)];
    return made?.amount ?? null;
  }

  set(step, entry, value, how) {
    const settings = { ...step.settings, [entry.key]: value };
    delete settings.to;
    this.app.work.changeStep(step.id, { settings }, how);
  }

  // The slider ends at the most that holds; the field beside it takes what is typed.
  amount(step, entry, label) {
    const { unit } = this.app.work.now;
    const value = this.now(step, entry);
    const { least, most } = this.reach(step, entry);
    const id = `amount-${step.id}`;
    const current = () => this.app.work.now.steps.find((one) => one.id === step.id);
    const key = { key: id };
    const size = stepSize(entry.unit, unit);
    const shown = (mm) => mm === null ? "" : entry.unit === "deg" ? String(Math.round(mm * 10) / 10) : bare(mm, unit);
    const slider = h("input", {
      type: "range", id: `slide-${step.id}`, min: least, max: most, step: this.notch(entry),
      value: String(value ?? 0), "aria-label": `Amount of ${label}`, "aria-valuetext": measure(value ?? 0, entry.unit, unit),
      oninput: (event) => {
        // Between the ends as they are by now: they are worked out while the page is used.
        const { min, max, value: at } = event.target;
        const mm = Math.min(Number(max), Math.max(Number(min), Math.round(Number(at) * 100) / 100));
        const box = document.getElementById(id);
        if (box) box.value = shown(mm);
        event.target.setAttribute("aria-valuetext", measure(mm, entry.unit, unit));
        this.set(current(), entry, mm, { ...key, light: true });
      },
      onchange: () => this.app.settle(),
    });
    const turn = (by) => this.set(current(), entry, Math.round(((this.now(current(), entry) ?? 0) + by) * 100) / 100, key);
    return h("div", { class: "amount" },
      h("div", { class: "slide" }, slider,
        h("span", { class: "ends", id: `ends-${step.id}` }, h("span", {}, measure(least, entry.unit, unit)), h("span", {}, measure(most, entry.unit, unit)))),
      h("span", { class: "entry" },
        button("−", () => turn(-size), { "aria-label": `Less ${label}` }),
        h("input", {
          id, type: "text", inputmode: "decimal", autocomplete: "off", value: shown(value), "aria-label": `Amount of ${label}, in ${entry.unit === "deg" ? "degrees" : unit}`,
          onchange: (event) => {
            const text = event.target.value;
            const typed = entry.unit === "deg" ? Number(text.replace(",", ".").replace("−", "-").replace("°", "")) : parse(text, unit);
            event.target.setAttribute("aria-invalid", !Number.isFinite(typed));
            this.app.say(Number.isFinite(typed) ? "" : notRead(text, entry.unit));
            if (Number.isFinite(typed)) this.set(current(), entry, typed);
          },
        }),
        h("span", { class: "unit" }, entry.unit === "deg" ? "°" : unit),
        button("+", () => turn(size), { "aria-label": `More ${label}` })));
  }

  // How far a step goes either way: as worked out, until then what is usual.
  reach(step, entry) {
    const known = this.app.reach.get(step.id);
    const value = this.now(step, entry) ?? 0;
    const [low, high] = entry.usual ?? [-Math.abs(entry.amount), Math.abs(entry.amount)];
    const { least, most } = known ?? { least: Math.min(low, 0) * 1.5, most: Math.max(high, 0) * 1.5 };
    // Sliders count their notches from their lower end: on round amounts, and never beyond what holds.
    const notch = this.notch(entry);
    const [low_end, high_end] = [Math.ceil(least / notch - 1e-9) * notch, Math.floor(most / notch + 1e-9) * notch];
    const round = (mm) => Math.round(mm * 1000) / 1000;
    return { least: round(Math.min(low_end, value)), most: round(Math.max(high_end, value)) };
  }

  // The least by which a slider moves.
  notch(entry) {
    return entry.unit === "deg" ? 0.1 : this.app.work.now.unit === "in" ? 25.4 / 32 : 0.5;
  }

  // The ends of all sliders, once they are known, under whoever is dragging.
  refreshReach() {
    for (const step of this.app.work.now.steps) {
      const slider = document.getElementById(`slide-${step.id}`);
      const entry = this.entry(step.name);
      if (!slider || !entry.key) continue;
      const { least, most } = this.reach(step, entry);
      slider.min = least;
      slider.max = most;
      const { unit } = this.app.work.now;
      const ends = document.getElementById(`ends-${step.id}`);
      ends.firstChild.textContent = measure(least, entry.unit, unit);
      ends.lastChild.textContent = measure(most, entry.unit, unit);
    }
  }

  settings(step, entry) {
    const { work, drafted } = this.app;
    const change = (key, value) => work.changeStep(step.id, { settings: put(step.settings, key, value) });
    const pieces = (drafted?.pieces ?? []).map((pair) => pair.after ?? pair.before).filter(Boolean);
    const named = (of) => [...new Set(pieces.flatMap((piece) => piece[of].map((one) => one.name)))];
    const fields = entry.settings.map((setting) => {
      const id = `set-${step.id}-${setting.key.replaceAll(".", "-")}`;
      const value = get(step.settings, setting.key);
      if (setting.holds === "truth") return check(id, setting.label, value === true, (on) => change(setting.key, on || undefined));
      if (setting.holds === "length" || setting.holds === "share") {
        const unit = setting.holds === "share" ? "" : work.now.unit;
        const shown = value === undefined ? "" : unit ? bare(value, unit) : String(value);
        return field(id, setting.label, shown, {
          unit, placeholder: setting.usual, change: (text) => {
            const number = unit ? parse(text, unit) : Number(text.replace(",", "."));
            if (text.trim() === "") change(setting.key, undefined);
            else if (Number.isFinite(number)) change(setting.key, number);
            else this.app.say(notRead(text, unit ? "mm" : "share"));
          },
        });
      }
      const options = setting.holds === "word" ? setting.words : named(setting.holds === "dart" ? "darts" : "edges");
      const all = [...new Set([value ?? setting.usual, ...options])];
      return select(id, setting.label, all.map((word) => [word, words(word)]), value ?? setting.usual, (word) => change(setting.key, word));
    });
    const ownSide = entry.settings.some((setting) => setting.key === "side");
    if (!ownSide) {
      fields.push(choice(`side-${step.id}`, "Side", [["both", "Both"], ["left", "Her left"], ["right", "Her right"]], step.settings.side ?? "both",
        (side) => change("side", side === "both" ? undefined : side)));
    }
    if (entry.target) {
      const { to } = step.settings;
      const form = step.name === "back_length_reduction" ? [["form", "Until it is as long as her back"]] : [];
      fields.push(choice(`to-${step.id}`, "How much", [["amount", "The amount"], ["body", "What this body needs"], ...form], typeof to === "string" ? to : "amount", (how) => {
        const settings = { ...step.settings };
        if (how !== "amount") {
          delete settings[entry.key];
          settings.to = how;
        } else {
          delete settings.to;
          settings[entry.key] = this.now(step, entry) ?? entry.amount;
        }
        work.changeStep(step.id, { settings });
      }));
    }
    return h("div", { class: "settings" }, fields);
  }

  // A block made for somebody else, fitted to the wearer.

  wearerPart() {
    const { work } = this.app;
    const { base, own } = work.now;
    const made = base ? base.label : isDocument(own) ? "the wearer in its document" : null;
    return h("section", { class: "fit" }, h("h2", {}, "Fit to the wearer"),
      h("p", { class: "hint" }, made ? `The block is made for ${made}. One press finds the steps that make it fit ${work.now.name.trim() || "the wearer"}.`
        : "The block is drafted from the wearer's own measurements. To fit another's block or a size to her, open that set or size table here."),
      h("div", { class: "row" },
        button(base ? "Another block's body …" : "The block's body …", () => this.app.pick((files) => this.openBase(files))),
        made ? button("Fit", () => this.fit(), { class: "main", id: "fit" }) : null,
        base ? button("Draft for the wearer again", () => work.change({ base: null })) : null),
      this.fitted ? h("pre", { class: "fitted" }, this.fitted) : null);
  }

  async openBase(files) {
    const [name, text] = Object.entries(files)[0] ?? [];
    if (!name) return;
    const answer = await this.app.link.ask({ ask: "read", text, name, files });
    if (answer.status !== "ok") return this.app.fail(answer);
    if (answer.kind === "set") this.app.work.change({ base: { set: answer.set, label: answer.set.name } });
    else if (answer.kind === "table") this.fit({ table: "sizes.yaml" }, { "sizes.yaml": text });
    else this.app.fail({ errors: [{ text: `${name} is a job`, cure: "open a measurement set or a size table here" }] });
  }

  async fit(body, files) {
    const { work, link } = this.app;
    const job = this.app.job();
    if (body) {
      job.body = body;
      delete job.size;
    } else if (!work.now.base) delete job.body;
    this.app.say("Fitting …");
    const answer = await link.ask({ ask: "fit", job, files: { ...work.now.files, ...files }, wearer: wholeSet(work.now) });
    if (answer.status !== "ok") return this.app.fail(answer);
    this.fitted = answer.text;
    const steps = answer.steps.map((step) => stepOf(...Object.entries(step)[0]));
    const base = { set: answer.made_for, label: answer.size ? `size ${answer.size}` : answer.made_for.name };
    work.change({ base, steps: [...work.now.steps, ...steps] });
    this.app.say(steps.length ? `Fitted in ${counted(steps.length, "step")}.` : "It fits as it is.");
  }

  table() {
    const { work } = this.app;
    const { unit, steps } = work.now;
    const step = steps.find((one) => one.id === this.chosen && !one.off) ?? steps.find((one) => !one.off);
    const index = step ? this.place_of(step) : -1;
    return [
      this.app.drafted ? this.app.fitMap.section() : null,
      report.warnings(this.app.report),
      step ? h("div", { class: "beside" }, report.account(this.app.report, index, unit),
        report.ways(this.app.report, index, unit, (hinge) => work.changeStep(step.id, { settings: { ...step.settings, hinge } }))) : null,
    ];
  }
}

function picture(sign) {
  const holder = h("span", { class: "sign-picture", "aria-hidden": "true" });
  holder.append(document.importNode(new DOMParser().parseFromString(sign.drawing, "image/svg+xml").documentElement, true));
  return holder;
}
