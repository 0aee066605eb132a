// The work: what is wanted of whom. One plain object, changed by making another, so that everything can
// be undone; kept for a reload of the page.

const KEY = "blockwright-work";
const MOST = 300;

let steps = 0;

export const blank = () => ({
  name: "", unit: "cm", source: null, notes: null, taken: {},
  base: null, title: "", size: "", date: "",
  block: "dress", own: null, fit: "regular", ease: {}, length: null, sleeve: "long", cap_ease: null,
  waist_darts: null, side: null, steps: [], allowance: null, print: { paper: "a4" }, files: {},
  cloth: { width: "140 cm", folded: false, one_way: false },
});

export const stepOf = (name, settings, off = false) => ({ id: `s${Date.now().toString(36)}${steps++}`, name, settings, off });

export class Work {
  constructor() {
    this.now = blank();
    this.past = [];
    this.coming = [];
    this.listeners = [];
    this.key = null;
    this.at = 0;
    // What stands in the files, to know whether there is anything to save.
    this.saved = JSON.stringify(this.now);
    this.read = null;
  }

  listen(act) {
    this.listeners.push(act);
  }

  tell(how) {
    this.keep();
    for (const act of this.listeners) act(how);
  }

  // Changes the work. Changes of one key that follow each other closely are undone together. A light
  // change is one under way: typing, a slider.
  change(fields, { key = null, light = false } = {}) {
    const together = key && key === this.key && performance.now() - this.at < 1500;
    if (!together) {
      this.past.push(this.now);
      if (this.past.length > MOST) this.past.shift();
    }
    this.coming = [];
    this.key = key;
    this.at = performance.now();
    this.now = { ...this.now, ...fields };
    this.tell({ light });
  }

  changeStep(id, fields, how) {
    const steps = this.now.steps.map((step) => step.id === id ? { ...step, ...fields } : step);
    this.change({ steps }, how);
  }

  undo() {
    if (!this.past.length) return;
    this.coming.push(this.now);
    this.now = this.past.pop();
    this.key = null;
    this.tell({});
  }

  redo() {
    if (!this.coming.length) return;
    this.past.push(this.now);
    this.now = this.coming.pop();
    this.key = null;
    this.tell({});
  }

  // Another piece of work in place of this one; that too can be undone.
  open(work) {
    this.change({ ...blank(), ...work });
    this.isSaved();
  }

  isSaved() {
    this.saved = JSON.stringify(this.now);
    this.tell({});
  }

  get open_changes() {
    return JSON.stringify(this.now) !== this.saved;
  }

  keep() {
    try {
      sessionStorage.setItem(KEY, JSON.stringify({ now: this.now, saved: this.saved, read: this.read }));
    } catch {
      // Storage is full or switched off: only a reload is the worse for it.
    }
  }

  // What was here before the page was loaded again.
  restore() {
    try {
      const kept = JSON.parse(sessionStorage.getItem(KEY));
      if (!kept?.now) return false;
      this.now = { ...blank(), ...kept.now };
      const same = kept.saved === JSON.stringify(kept.now);
      this.saved = same ? JSON.stringify(this.now) : kept.saved;
      this.read = kept.read;
      return true;
    } catch {
      return false;
    }
  }
}

// The wearer, as a set of measurements.
export function setOf(work) {
  const set = { name: work.name, unit: work.unit, measurements: work.taken };
  if (work.source) set.source = work.source;
  if (work.notes) set.notes = work.notes;
  return set;
}

// The wearer as files have her: a name, and nothing blank.
export function wholeSet(work) {
  const filled = Object.entries(work.taken).filter(([, text]) => text.trim() !== "");
  return { ...setOf(work), name: work.name.trim() || "unnamed wearer", measurements: Object.fromEntries(filled) };
}

// Whether a block of one's own is a pattern document, which names its body.
export const isDocument = (own) => Boolean(own?.file.endsWith(".json"));

// The job with the keys of a job file. Without `until`, all steps that are on.
export function jobOf(work) {
  const job = { title: work.title.trim() || "Untitled", block: work.own ?? work.block };
  if (work.size.trim()) job.size = work.size.trim();
  if (work.date.trim()) job.date = work.date.trim();
  const block = work.block;
  if (!work.own) {
    const ease = Object.entries(work.ease).filter(([, mm]) => mm !== null);
    job.ease = ease.length ? { fit: work.fit, ...Object.fromEntries(ease) } : work.fit;
    const onePiece = ["dress", "tunic", "shirt"].includes(block);
    if (work.length !== null && block !== "bodice") job.length = work.length;
    if (block !== "skirt") {
      if (work.sleeve !== "none") job.sleeve = work.sleeve;
      if (work.sleeve !== "none" && work.cap_ease !== null) job.cap_ease = work.cap_ease;
    }
    if (onePiece && work.waist_darts !== null) job.waist_darts = work.waist_darts;
    if (onePiece && work.side !== null) job.side = work.side;
  }
  const on = work.steps.filter((step) => !step.off);
  if (on.length) job.alterations = on.map((step) => ({ [step.name]: step.settings }));
  if (work.allowance !== null) job.allowance = work.allowance;
  // A document says for whom its block was made.
  const nobody = isDocument(work.own) && Object.values(work.taken).every((text) => text.trim() === "");
  if (work.base) job.body = work.base.set;
  else if (!nobody) job.body = wholeSet(work);
  if (Object.keys(work.print).length) job.print = work.print;
  return job;
}

// Steps that are off, with the number of those before each that are on.
export function offOf(work) {
  let at = 0;
  const off = [];
  for (const step of work.steps) {
    if (step.off) off.push({ at, step: { [step.name]: step.settings } });
    else at += 1;
  }
  return off;
}

function textOf(value, unit, name) {
  if (typeof value === "string") return value;
  return name === "shoulder_slope" ? String(value) : `${value} ${unit}`;
}

// A set that was opened, as a part of the work.
export function fromSet(set) {
  const values = Object.entries(set.measurements ?? {});
  return {
    name: set.name === "unnamed wearer" ? "" : set.name ?? "", unit: set.unit, source: set.source ?? null,
    notes: set.notes ?? null,
    taken: Object.fromEntries(values.map(([name, value]) => [name, textOf(value, set.unit, name)])),
  };
}

// A job that was opened, as the work.
export function fromJob({ job, wearer, off }, files = {}) {
  const theirs = typeof job.block === "object" && !Array.isArray(job.block) ? job.block : null;
  // A block of one's own is kept under the name that all such files have here.
  const kept = theirs && `own-block.${theirs.file.endsWith(".svg") ? "svg" : "json"}`;
  const text = theirs && (files[theirs.file] ?? files[theirs.file.split(/[\\/]/).pop()]);
  const own = theirs && { ...theirs, file: kept };
  const ease = typeof job.ease === "object" ? job.ease : { fit: job.ease ?? "regular" };
  const { fit = "regular", ...places } = ease;
  const steps = (job.alterations ?? []).map((step) => stepOf(...Object.entries(step)[0]));
  for (const [index, { at, step }] of off.entries()) {
    const [name, settings] = Object.entries(step)[0];
    steps.splice(at + index, 0, stepOf(name, settings, true));
  }
  return {
    ...fromSet(wearer ?? job.body ?? { unit: "cm" }),
    base: wearer && job.body ? { set: job.body, label: job.body.name } : null,
    title: job.title, size: job.size ?? "", date: job.date ?? "",
    block: own ? "dress" : job.block, own, fit, ease: places, length: job.length ?? null,
    sleeve: job.sleeve ?? "none", cap_ease: job.cap_ease ?? null,
    waist_darts: job.waist_darts ?? null, side: job.side ?? null, steps,
    allowance: job.allowance ?? null, print: job.print ?? { paper: "a4" },
    files: own ? { [kept]: text } : {},
  };
}
