// What comes out: files to print, to cut by, to hand on, and the work itself.

import { counted, title } from "./lengths.js";
import { blob, button, check, download, field, h, problems, select } from "./parts.js";

const PAPERS = {
  a4: "A4, home printer", letter: "US Letter, home printer", a3: "A3", legal: "US Legal", a0: "A0, copy shop",
};

export class Out {
  constructor(app) {
    this.app = app;
    this.made = [];
    this.sizes = null;
  }

  desk() {
    const { work, about, folder } = this.app;
    const { print, cloth } = work.now;
    const paper = (name) => PAPERS[name] ?? `${title(name).replace("-", " ")} mm wide`;
    const make = (label, what, more = {}) => button(label, () => this.make(what, more), { id: `make-${what}` });
    const group = (head, text, ...parts) => h("section", { class: "sheet" }, h("h2", {}, head), h("p", { class: "hint" }, text), parts);
    return [
      group("Print", "Full size, on pages to glue or on one sheet. Print at 100 % and measure the test square first.",
        select("paper", "Paper", about.papers.map((name) => [name, paper(name)]), print.paper ?? "a4", (name) => work.change({ print: { ...print, paper: name } })),
        h("div", { class: "row" }, button("PDF on this paper", () => this.make("pages"), { class: "main", id: "make-pages" }), make("PDF on one sheet", "sheet"))),
      group("For other programs", "The picture in true size, the pieces for cutting programs, the whole pattern as data, the page for the fitting.",
        h("div", { class: "row" }, make("SVG", "svg"), make("DXF", "dxf"), make("JSON", "document"), make("Fitting page", "fitting"), make("Batch line", "batch"))),
      group("Lay on cloth", "How the pieces lie, and how much cloth they need.",
        h("div", { class: "fields" }, field("cloth-width", "Width of the cloth", cloth.width, { change: (width) => work.change({ cloth: { ...cloth, width } }) })),
        check("cloth-folded", "Folded lengthwise", cloth.folded, (folded) => work.change({ cloth: { ...cloth, folded } })),
        check("cloth-one-way", "One way only: nap or print", cloth.one_way, (one_way) => work.change({ cloth: { ...cloth, one_way } })),
        h("div", { class: "row" }, button("Lay picture", () => this.make("lay", cloth), { id: "make-lay" }))),
      group("Sizes", "The same work in every size of a table, laid over one another.",
        h("div", { class: "row" }, button(this.sizes ? "Another size table …" : "Open a size table …", () => this.app.pick((files) => this.openSizes(files))),
          this.sizes ? button(`All ${this.sizes.labels.length} sizes of ${this.sizes.name}`, () => this.make("range", { table: this.sizes.text }), { id: "make-range" }) : null)),
      group("The work itself", folder ? `Kept in the folder ${folder} as job.yaml and wearer.yaml, which the commands read too.`
        : "Two files, job.yaml and wearer.yaml, which open here again and which the commands read too.",
        h("div", { class: "row" }, folder ? button("Save", () => this.app.save(), { class: "main" }) : null,
          button("Download job.yaml and wearer.yaml", () => this.app.saveFiles(), { id: "download-work" }))),
    ];
  }

  async openSizes(files) {
    const [name, text] = Object.entries(files)[0] ?? [];
    if (!name) return;
    const answer = await this.app.link.ask({ ask: "read", text, name });
    if (answer.status !== "ok") return this.app.fail(answer);
    if (answer.kind !== "table") return this.app.fail({ errors: [{ text: `${name} is not a size table`, cure: "open a file with sizes" }] });
    this.sizes = { name: answer.name, labels: answer.sizes, text };
    this.app.fillDesk();
  }

  async make(what, more = {}) {
    const { work, link } = this.app;
    this.app.say("Making …");
    const answer = await link.ask({ ask: "output", job: this.app.job(), files: work.now.files, what, ...more });
    if (answer.status !== "ok") {
      this.wrong = answer.errors;
      this.app.say("Not made.");
      this.app.fillTable();
      return;
    }
    this.wrong = null;
    for (const one of this.made) URL.revokeObjectURL(one.address);
    this.text = answer.text;
    this.made = answer.files.map((file) => {
      const content = blob(file);
      return { name: file.name, content, type: file.type, address: URL.createObjectURL(content) };
    });
    if (this.made.length === 1) download(this.made[0].name, this.made[0].content, this.made[0].type);
    this.app.say(this.made.length === 1 ? `${this.made[0].name} is made.` : `${this.made.length} files are made.`);
    this.app.fillTable();
  }

  table() {
    const { report } = this.app;
    const picture = this.made.find((file) => file.name === "lay.svg" || file.name === "nest.svg");
    const size = (bytes) => bytes < 1000 ? `${bytes} bytes` : `${Math.round(bytes / 1000)} kB`;
    return [
      this.wrong ? problems(this.wrong) : null,
      this.made.length ? h("section", { class: "report" }, h("h2", {}, "Made"),
        h("ul", { class: "files" }, this.made.map((file) => h("li", {}, h("a", { href: file.address, download: file.name }, file.name), ` ${size(file.content.size)}`))),
        picture ? h("img", { class: "made", src: picture.address, alt: `The picture ${picture.name}` }) : null,
        this.text ? h("pre", { tabindex: "0" }, this.text) : null) : null,
      h("section", { class: "report cautions" }, h("h2", {}, "Before you cut"),
        h("ul", {}, (report?.cautions ?? ["Print at 100 %, and measure the test square before anything else.", "Sew a toile before cutting good cloth."])
          .map((text) => h("li", {}, text)))),
      !this.app.somebody() ? h("p", { class: "doubt" }, "There is no pattern yet: height, bust, waist and hip are needed.") : null,
      report ? h("section", { class: "report" }, h("h2", {}, "What will be cut"), h("ol", { class: "pieces" }, report.pieces.map((text) => h("li", {}, text.replace(/^\d+ /, "")))),
        report.warnings.length ? h("p", { class: "doubt" }, `${counted(report.warnings.length, "warning")}; see Pattern.`) : null) : null,
    ];
  }
}
