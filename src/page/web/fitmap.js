// The wearer's body in the round and the map of the pieces on it, kept up with the work.

import { length, title, words } from "./lengths.js";
import { h, refill, table } from "./parts.js";

// A drawing of the library.
function drawing(text) {
  return document.importNode(new DOMParser().parseFromString(text, "text/html").body.firstElementChild, true);
}

export class FitMap {
  constructor(app) {
    this.app = app;
    this.open = true;
  }

  // Asks again if the work is another; only while it is looked at.
  async look() {
    const { app } = this;
    if (app.tab !== "fitting" || !this.open || !app.drafted) return;
    const job = app.job();
    const key = JSON.stringify(job);
    if (key === this.asked && app.work.now.files === this.files) return;
    const answer = await app.link.ask({ ask: "fit_map", job, files: app.work.now.files });
    [this.asked, this.files] = [key, app.work.now.files];
    this.answer = answer.status === "ok" ? answer : null;
    this.refresh();
  }

  refresh() {
    const place = document.getElementById("fit-map");
    if (place) refill(place, this.content());
  }

  section() {
    return h("details", { class: "report fit-map", open: this.open, ontoggle: (event) => {
      if (this.open === event.target.open) return;
      this.open = event.target.open;
      this.look();
    } }, h("summary", {}, h("h2", {}, "Fit map")), h("div", { id: "fit-map" }, this.content()));
  }

  content() {
    const { answer } = this;
    if (!answer) return [h("p", { class: "hint" }, "Comes with the pattern.")];
    const { unit } = this.app.work.now;
    const { refused, body } = answer;
    const shown = (one, value) => one.spread === undefined || value > 12 || value < -12 ? length(value, unit) : value.toFixed(2);
    return [
      h("p", {}, `Threads of the cloth beside taut threads on the body of ${answer.wearer}.`),
      refused ? h("p", { class: "wrong" }, `${refused.text}; ${refused.cure}.`) : null,
      h("div", { role: "status" },
        h("ul", { class: "advice" }, [...answer.advice, ...answer.posture].map((text) => h("li", {}, text)))),
      h("div", { class: "map-pieces" }, answer.pieces.map((piece) => h("figure", {}, drawing(piece.svg), h("figcaption", {}, title(piece.name)))),
        answer.form ? h("figure", {}, drawing(answer.form), h("figcaption", {}, "The body in the round")) : null),
      answer.pieces.length ? drawing(answer.legend) : null,
      body ? h("details", { id: "form-figures" }, h("summary", {}, "What the body rests on"),
        table("As a tape finds them on it; the nape above the waist", ["", "given", "found", "miss"], body.reproduced.map((one) =>
          [title(one.of), length(one.given, unit), length(one.found, unit), `${one.miss} mm`])),
        table("What no tape gives, beside what the survey expects", ["", "found", "expected", "standard deviations"], body.dimensions.map((one) =>
          [title(words(one.of)), shown(one, one.value), shown(one, one.expected), one.spreads.toFixed(1)]))) : null,
      h("p", { class: "hint" }, answer.caution),
    ];
  }
}
