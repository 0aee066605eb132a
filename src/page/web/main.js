// The page: the work in the middle, around it the link to the library and one panel for each part.

import { Board } from "./board.js";
import { FitMap } from "./fitmap.js";
import { Fitting } from "./fitting.js";
import { connect } from "./link.js";
import { title } from "./lengths.js";
import { Out } from "./out.js";
import { blob, button, choice, download, h, notice, problems, refill } from "./parts.js";
import { PatternPanel } from "./pattern.js";
import { Work, fromJob, fromSet, jobOf, offOf, setOf, wholeSet } from "./state.js";
import { Wearer } from "./wearer.js";

const TABS = [["wearer", "Wearer"], ["pattern", "Pattern"], ["fitting", "Fitting"], ["out", "Out"]];
const PAUSE = 220;
// In place of the digest of files that could not be read: saving asks before it replaces them.
const UNREAD = "unread";
const element = (id) => document.getElementById(id);

class App {
  constructor(link) {
    this.link = link;
    this.work = new Work();
    this.folder = link.hello.folder ?? null;
    this.known = null;
    this.undrafted = null;
    this.drafted = null;
    this.report = null;
    this.reach = new Map();
    this.tab = "wearer";
    this.errors = null;
    this.warned = "";
  }

  async start() {
    this.about = await this.link.ask({ ask: "describe" });
    if (this.about.status !== "ok") {
      refill(element("desk"), problems(this.about.errors));
      return;
    }
    this.board = new Board({ aligns: this.about.aligns, unit: () => this.work.now.unit, print: (on) => this.asPrinted(on) });
    this.fitMap = new FitMap(this);
    this.panels = { wearer: new Wearer(this), pattern: new PatternPanel(this), fitting: new Fitting(this), out: new Out(this) };
    const restored = this.work.restore();
    const wrong = !restored && this.folder ? await this.openFolder(this.link.hello) : null;
    this.tab = sessionStorage.getItem("blockwright-tab") ?? "wearer";
    this.work.listen((how) => this.changed(how));
    this.tabs();
    this.tools();
    this.open(this.tab);
    this.keys();
    this.others(this.link.hello);
    if (this.folder) setInterval(async () => this.others(await this.link.here()), 8000);
    addEventListener("beforeunload", (event) => {
      if (this.work.open_changes && this.somebody()) event.preventDefault();
    });
    await this.pump(true);
    if (wrong) this.fail(wrong);
    document.body.dataset.ready = "yes";
  }

  // The folder and other pages.

  // Opens what is in the folder; what is wrong with it, or null.
  async openFolder({ files, digest }) {
    this.work.read = digest;
    const text = files["job.yaml"];
    const set = files["wearer.yaml"];
    if (!text && !set) return null;
    const wrong = await this.read(text ?? set, text ? "job.yaml" : "wearer.yaml", files);
    if (wrong) this.work.read = UNREAD;
    else {
      this.work.past = [];
      this.work.isSaved();
    }
    return wrong;
  }

  others({ status, others, alone, digest }) {
    if (status !== "ok") return;
    const shared = others > 0 || alone === false;
    const theirs = this.work.read && this.work.read !== UNREAD && digest && digest !== this.work.read;
    const text = theirs ? "The files in the folder were changed by another page or program. Saving will ask before it replaces them."
      : shared ? "This folder is open in another page too. Whoever saves second is asked before anything is replaced." : "";
    if (text !== this.warned) {
      this.warned = text;
      this.head();
    }
  }

  // Opens a job or a set; what is wrong with it, or null.
  async read(text, name, files) {
    const answer = await this.link.ask({ ask: "read", text, name, files });
    const wrong = answer.status !== "ok" ? answer : answer.kind !== "table" ? null
      : { errors: [{ text: `${name} is a size table`, cure: "open it under Out, or under Fitting" }] };
    if (wrong) this.fail(wrong);
    else if (answer.kind === "job") {
      const own = Object.fromEntries(Object.entries(files).filter(([file]) => /\.(json|svg)$/.test(file)));
      this.work.open(fromJob(answer, own));
      this.say(`${name} is open.`);
    } else {
      this.work.change(fromSet(answer.set));
      this.say(`${name} is open: the wearer is ${answer.set.name}.`);
    }
    return wrong;
  }

  // Lets a person choose files, and gives their texts by name.
  pick(take) {
    const input = h("input", { type: "file", multiple: true, accept: ".yaml,.yml,.json,.svg", id: "picked", class: "sr" });
    input.addEventListener("change", async () => {
      const texts = {};
      for (const file of input.files) {
        if (file.size <= 1 << 20) texts[file.name] = await file.text();
        else this.fail({ errors: [{ text: `${file.name} is larger than 1 MiB`, cure: "open a job, a set or a table" }] });
      }
      input.remove();
      take(texts);
    });
    element("picked")?.remove();
    document.body.append(input);
    input.click();
  }

  openFiles() {
    this.pick(async (files) => {
      const names = Object.keys(files);
      const isJob = (name) => /^\s*"?(title|block)"?\s*:/m.test(files[name]);
      const first = names.find(isJob) ?? names[0];
      if (first) await this.read(files[first], first, files);
    });
  }

  async written() {
    const { now } = this.work;
    const answer = await this.link.ask({
      ask: "write", job: this.job(), files: now.files, wearer: now.base ? wholeSet(now) : null, off: offOf(now),
    });
    if (answer.status !== "ok") this.fail(answer);
    return answer.status === "ok" ? answer.files : null;
  }

  async saveFiles() {
    for (const file of await this.written() ?? []) download(file.name, file.text, "application/yaml");
    for (const [name, text] of Object.entries(this.work.now.files)) download(name, text, "application/octet-stream");
    this.work.isSaved();
  }

  async save(over = false) {
    if (!this.folder) return this.saveFiles();
    const made = await this.written();
    if (!made) return;
    const files = { ...this.work.now.files, ...Object.fromEntries(made.map((file) => [file.name, file.text])) };
    const answer = await this.link.save(files, over ? null : this.work.read);
    if (answer.status === "ok") {
      this.work.read = answer.digest;
      this.work.isSaved();
      this.warned = "";
      this.say(`Saved in ${this.folder}.`);
    } else if (answer.errors[0].code === "changed_elsewhere") this.askWhose(this.work.read === UNREAD ? "the folder holds files that could not be opened here" : answer.errors[0].text);
    else this.fail(answer);
  }

  askWhose(text) {
    const dialog = h("dialog", { "aria-labelledby": "whose" }, h("h2", { id: "whose" }, "Replace the files in the folder?"), h("p", {}, `${title(text)}.`),
      h("div", { class: "row" },
        button("Open theirs", async () => {
          dialog.close();
          const hello = await this.link.ask({ ask: "hello", page: "again" });
          await this.link.ask({ ask: "bye", page: "again" });
          await this.openFolder(hello);
        }),
        button("Save over them", () => {
          dialog.close();
          this.save(true);
        }),
        button("Download mine", () => {
          dialog.close();
          this.saveFiles();
        }),
        button("Go on without saving", () => dialog.close(), { class: "main" })));
    dialog.addEventListener("close", () => dialog.remove());
    document.body.append(dialog);
    dialog.showModal();
  }

  // The frame of the page.

  tabs() {
    const bar = element("tabs");
    bar.replaceChildren(...TABS.map(([name, label], index) => h("button", {
      type: "button", role: "tab", id: `tab-${name}`, "aria-controls": "main", onclick: () => this.open(name),
      onkeydown: (event) => {
        const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
        if (!by) return;
        const next = TABS[(index + by + TABS.length) % TABS.length][0];
        this.open(next);
        element(`tab-${next}`).focus();
      },
    }, h("span", { class: "nr", "aria-hidden": "true" }, index + 1), label)));
  }

  open(name) {
    this.tab = this.panels[name] ? name : "wearer";
    sessionStorage.setItem("blockwright-tab", this.tab);
    for (const [other] of TABS) {
      const tab = element(`tab-${other}`);
      tab.setAttribute("aria-selected", other === this.tab);
      tab.tabIndex = other === this.tab ? 0 : -1;
    }
    document.body.dataset.tab = this.tab;
    element(`tab-${this.tab}`).scrollIntoView({ block: "nearest", inline: "nearest" });
    this.say("");
    this.fill();
    if (this.tab === "fitting") {
      this.fitMap.look();
      this.findReach();
    } else if (this.tab === "wearer") this.measureAgain();
  }

  tools() {
    const { work } = this;
    const units = choice("unit", "Unit", [["cm", "cm"], ["mm", "mm"], ["in", "in"]], work.now.unit, (unit) => work.change({ unit }));
    element("tools").replaceChildren(
      button("↶ Undo", () => work.undo(), { id: "undo", title: "Undo (Ctrl Z)", disabled: work.past.length === 0 }),
      button("↷ Redo", () => work.redo(), { id: "redo", title: "Redo (Ctrl Y)", disabled: work.coming.length === 0 }),
      units,
      button("Open …", () => this.openFiles(), { id: "open" }),
      button("Save", () => this.save(), { id: "save", title: "Save (Ctrl S)" }));
  }

  head() {
    const { work } = this;
    const { now } = work;
    element("title").textContent = now.title.trim() || "Untitled";
    document.title = `${now.title.trim() || "Untitled"}, blockwright`;
    const whom = now.name.trim() ? ` for ${now.name.trim()}` : "";
    const kept = work.open_changes ? "not saved" : this.folder ? `saved in ${this.folder}` : "";
    element("state").replaceChildren(h("span", {}, `${title(now.block)} block${whom}`),
      kept && h("span", { class: work.open_changes ? "unsaved" : "saved" }, `, ${kept}`), this.warned ? h("span", { class: "warned", role: "status" }, this.warned) : "");
    element("undo").disabled = work.past.length === 0;
    element("redo").disabled = work.coming.length === 0;
    for (const input of document.querySelectorAll("input[name=unit]")) input.checked = input.value === now.unit;
  }

  keys() {
    addEventListener("keydown", (event) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const act = key === "z" && !event.shiftKey ? () => this.work.undo()
        : key === "y" || key === "z" ? () => this.work.redo() : key === "s" ? () => this.save() : null;
      if (!act) return;
      event.preventDefault();
      act();
    });
  }

  fill() {
    this.head();
    this.fillDesk();
    this.fillTable();
  }

  fillDesk() {
    refill(element("desk"), this.errors ? problems(this.errors) : null, this.panels[this.tab].desk());
    if (this.tab === "wearer") this.panels.wearer.refresh();
  }

  fillTable() {
    const place = element("table");
    const drawn = this.tab !== "wearer";
    const content = this.panels[this.tab].table();
    const none = drawn && !this.drafted && this.tab !== "out" ? h("div", { class: "empty" }, h("h2", {}, "No pattern yet"),
      this.undrafted ? problems(this.undrafted) : null,
      this.somebody() ? null : h("p", {}, "Height, bust, waist and hip are needed: enter them under Wearer."),
      this.somebody() ? null : button("To the wearer", () => this.open("wearer"), { class: "main" })) : null;
    // The board stays where it is: taking it out would lose what it shows.
    let below = element("below");
    if (!below) {
      below = h("div", { id: "below" });
      place.replaceChildren(this.board.element, below);
    }
    this.board.element.hidden = !drawn || !this.drafted;
    refill(below, none, content);
    if (drawn && this.drafted) this.board.seen();
  }

  say(text) {
    notice(text);
  }

  fail({ errors }) {
    this.errors = errors;
    this.say(errors.map((error) => error.text).join("; "));
    this.fillDesk();
    this.errors = null;
  }

  // Keeping up with the work.

  changed({ light }) {
    this.head();
    this.moving = light;
    if (light) {
      clearTimeout(this.pause);
      this.pause = setTimeout(() => this.settle(), PAUSE);
      this.pump(false);
    } else {
      this.fill();
      this.pump(true);
    }
  }

  // A change under way has come to rest: now everything is worked out.
  settle() {
    clearTimeout(this.pause);
    this.moving = false;
    this.pump(true);
  }

  measureAgain() {
    this.measured = null;
    this.pump(false);
  }

  job(work = this.work.now) {
    const job = jobOf(work);
    // Whom a block made for somebody else is compared with, once she can be.
    if (work.base && this.known?.complete && !this.known.rows.some((row) => row.state === "wrong")) job.wearer = wholeSet(work);
    return job;
  }

  // Asks again as long as something has changed while the last answer was made; one question at a time.
  async pump(whole) {
    this.whole = this.whole || whole;
    this.again = true;
    if (this.pumping) return;
    this.pumping = true;
    try {
      while (this.again) {
        this.again = false;
        const all = this.whole;
        this.whole = false;
        await this.measure();
        await this.draft(all);
        await this.fitMap.look();
      }
    } finally {
      this.pumping = false;
    }
    if (this.tab === "fitting") this.findReach();
  }

  async measure() {
    const { work } = this;
    const focus = this.panels.wearer.focus;
    const key = JSON.stringify([setOf(work.now), focus]);
    if (key === this.measured) return;
    const answer = await this.link.ask({ ask: "measure", set: setOf(work.now), unit: work.now.unit, focus });
    if (answer.status !== "ok") return this.fail(answer);
    this.measured = key;
    this.known = answer;
    if (this.tab === "wearer") this.panels.wearer.refresh();
  }

  // Whether there is somebody to make a pattern for.
  somebody() {
    const { now } = this.work;
    return this.known?.complete || now.base !== null || jobOf(now).body === undefined;
  }

  async draft(report) {
    const { work } = this;
    if (!this.somebody()) {
      this.undrafted = null;
      if (this.drafted) {
        this.drafted = null;
        this.report = null;
        this.fillTable();
      }
      return;
    }
    const job = this.job();
    const key = JSON.stringify(job);
    if (key === this.asked && work.now.files === this.askedFiles && (!report || this.reported === key)) return;
    const answer = await this.link.ask({ ask: "draft", job, files: work.now.files, report });
    this.asked = key;
    this.askedFiles = work.now.files;
    if (answer.status !== "ok") {
      this.drafted = null;
      this.report = null;
      // It stands in place of the drawing, whichever part of the page is open.
      this.undrafted = answer.errors;
      if (this.tab !== "wearer") this.say(answer.errors.map((error) => error.text).join("; "));
      this.fillTable();
      return;
    }
    this.undrafted = null;
    const first = !this.drafted;
    const refusedBefore = JSON.stringify(this.drafted?.refused);
    this.drafted = answer;
    if (!this.board.printed) this.board.show(answer);
    if (!report) {
      if (first) this.fillTable();
      if (this.tab === "fitting" && refusedBefore !== JSON.stringify(answer.refused)) this.fillDesk();
      return;
    }
    this.reported = key;
    this.report = answer.report;
    if (this.board.printed) await this.asPrinted(true);
    if (this.tab === "fitting" || this.tab === "pattern") this.fillDesk();
    this.fillTable();
  }

  // How far each step goes, worked out when nothing else is to do.
  async findReach() {
    const { work } = this;
    if (this.finding || this.moving || !this.drafted) return;
    this.finding = true;
    const on = work.now.steps.filter((step) => !step.off);
    const started = work.now;
    for (const [index, step] of on.entries()) {
      const entry = this.panels.fitting.entry(step.name);
      if (!entry?.key) continue;
      const bare = { ...step.settings };
      delete bare.to;
      bare[entry.key] = entry.amount;
      const before = { ...work.now, steps: [...on.slice(0, index), { ...step, settings: bare }] };
      const key = JSON.stringify(this.job(before));
      if (this.reach.get(step.id)?.key === key) continue;
      const answer = await this.link.ask({ ask: "most", job: this.job(before), files: work.now.files, step: index + 1 });
      if (answer.status === "ok") this.reach.set(step.id, { least: answer.least, most: answer.most, key });
      if (work.now !== started) break;
    }
    this.finding = false;
    this.panels.fitting.refreshReach();
    if (work.now !== started && !this.pumping) this.findReach();
  }

  async asPrinted(on) {
    if (this.board.printed) URL.revokeObjectURL(this.board.printed.address);
    this.board.printed = null;
    if (on) {
      const answer = await this.link.ask({ ask: "output", job: this.job(), files: this.work.now.files, what: "svg" });
      if (answer.status !== "ok") return this.fail(answer);
      const content = blob(answer.files[0]);
      const box = /viewBox="[\d.-]+ [\d.-]+ ([\d.]+) ([\d.]+)"/.exec(await content.text());
      this.board.printed = { address: URL.createObjectURL(content), width: Number(box[1]), height: Number(box[2]) };
    }
    this.board.fit();
    this.board.show(this.drafted);
  }
}

const app = new App(await connect());
await app.start();
