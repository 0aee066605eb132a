// The drawing: pieces as they lie on the paper, to be looked at from near and far, its edges to be asked.

import { bare, length, title, words } from "./lengths.js";
import { button, check, escaped, h, safely, select } from "./parts.js";

const GAP = 70;
const ROOM = 45;
const GRID = 50;

export class Board {
  constructor(settings) {
    this.settings = settings;
    this.view = null;
    this.chosen = null;
    this.hovered = null;
    this.align = "waist";
    this.showBefore = true;
    this.printed = null;
    this.moved = false;
    this.pointers = new Map();
    this.svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
    this.svg.setAttribute("id", "board");
    this.svg.setAttribute("tabindex", "0");
    this.svg.setAttribute("role", "img");
    this.svg.setAttribute("aria-describedby", "board-keys");
    this.svg.innerHTML = `<defs><pattern id="grid" width="${GRID}" height="${GRID}" patternUnits="userSpaceOnUse">`
      + `<path class="grid" d="M${GRID} 0H0V${GRID}"/></pattern></defs><rect class="ground" fill="url(#grid)"/>`
      + `<g class="cloth"></g>`;
    [this.ground, this.cloth] = [this.svg.querySelector(".ground"), this.svg.querySelector(".cloth")];
    this.readout = h("p", { class: "readout", id: "readout", "aria-live": "polite" });
    this.edges = h("span", {});
    this.element = h("div", { class: "board" }, this.svg, this.tools(), this.readout,
      h("p", { class: "sr", id: "board-keys" },
        "Arrow keys move the drawing, plus and minus zoom, 0 fits it. The list below has every edge."));
    this.listen();
  }

  tools() {
    const press = (label, name, act) => button(label, act, { "aria-label": name, title: name });
    this.overlay = h("span", { class: "overlay" });
    return h("div", { class: "board-tools", role: "toolbar", "aria-label": "The drawing" },
      h("span", { class: "keys" },
        press("Fit", "Fit the drawing", () => this.fit()),
        press("+", "Zoom in", () => this.zoom(0.8)), press("−", "Zoom out", () => this.zoom(1.25)),
        press("←", "Move left", () => this.pan(-0.15, 0)), press("→", "Move right", () => this.pan(0.15, 0)),
        press("↑", "Move up", () => this.pan(0, -0.15)), press("↓", "Move down", () => this.pan(0, 0.15))),
      this.edges, this.overlay);
  }

  listen() {
    const { svg } = this;
    svg.addEventListener("keydown", (event) => {
      const act = {
        "+": () => this.zoom(0.8), "=": () => this.zoom(0.8), "-": () => this.zoom(1.25), 0: () => this.fit(),
        ArrowLeft: () => this.pan(-0.1, 0), ArrowRight: () => this.pan(0.1, 0),
        ArrowUp: () => this.pan(0, -0.1), ArrowDown: () => this.pan(0, 0.1), Escape: () => this.choose(null),
      }[event.key];
      if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      act();
    });
    svg.addEventListener("wheel", (event) => {
      event.preventDefault();
      this.zoom(Math.exp(event.deltaY * (event.ctrlKey ? 0.01 : 0.0016)), this.at(event));
    }, { passive: false });
    svg.addEventListener("pointerdown", (event) => {
      this.pointers.set(event.pointerId, [event.clientX, event.clientY]);
      this.dragged = 0;
      // A pointer may have gone already.
      safely(() => svg.setPointerCapture(event.pointerId));
    });
    svg.addEventListener("pointermove", (event) => this.move(event));
    const leave = (event) => {
      if (this.pointers.delete(event.pointerId) && event.type === "pointerup" && this.dragged < 5) {
        const edge = this.edgeAt(event);
        this.choose(edge && same(edge, this.chosen) ? null : edge);
      }
    };
    svg.addEventListener("pointerup", leave);
    svg.addEventListener("pointercancel", leave);
    svg.addEventListener("pointerleave", () => this.hover(null));
    new ResizeObserver(() => this.seen()).observe(svg);
  }

  edgeAt(event) {
    const hit = document.elementFromPoint(event.clientX, event.clientY)?.closest?.(".hit");
    return hit ? [hit.dataset.piece, hit.dataset.edge] : null;
  }

  move(event) {
    const before = this.pointers.get(event.pointerId);
    if (!before) {
      if (event.pointerType === "mouse") this.hover(this.edgeAt(event));
      return;
    }
    const now = [event.clientX, event.clientY];
    const mm = this.mm();
    if (this.pointers.size === 2) {
      const other = [...this.pointers].find(([id]) => id !== event.pointerId)[1];
      const apart = (a) => Math.hypot(a[0] - other[0], a[1] - other[1]) || 1;
      const middle = { clientX: (now[0] + other[0]) / 2, clientY: (now[1] + other[1]) / 2 };
      this.zoom(apart(before) / apart(now), this.at(middle));
      this.view.x -= (now[0] - before[0]) * mm / 2;
      this.view.y -= (now[1] - before[1]) * mm / 2;
    } else {
      this.view.x -= (now[0] - before[0]) * mm;
      this.view.y -= (now[1] - before[1]) * mm;
    }
    this.dragged += Math.hypot(now[0] - before[0], now[1] - before[1]);
    this.moved = this.moved || this.dragged >= 5;
    this.pointers.set(event.pointerId, now);
    this.seen();
  }

  // Millimetres in a pixel.
  mm() {
    return this.view ? this.view.width / (this.svg.clientWidth || 1) : 1;
  }

  at({ clientX, clientY }) {
    const box = this.svg.getBoundingClientRect();
    const mm = this.mm();
    return [this.view.x + (clientX - box.left) * mm, this.view.y + (clientY - box.top) * mm];
  }

  zoom(by, at) {
    if (!this.view) return;
    const mm = this.mm();
    const [x, y] = at ?? [this.view.x + this.view.width / 2, this.view.y + this.svg.clientHeight * mm / 2];
    const width = Math.min(8000, Math.max(30, this.view.width * by));
    const share = width / this.view.width;
    this.view = { x: x - (x - this.view.x) * share, y: y - (y - this.view.y) * share, width };
    this.moved = true;
    this.seen();
  }

  pan(x, y) {
    if (!this.view) return;
    this.view.x += x * this.view.width;
    this.view.y += y * this.svg.clientHeight * this.mm();
    this.moved = true;
    this.seen();
  }

  fit() {
    this.moved = false;
    this.seen();
  }

  seen() {
    const [wide, high] = [this.svg.clientWidth, this.svg.clientHeight];
    if (!this.extent || !wide || !high) return;
    if (!this.moved || !this.view) {
      const [x0, y0, x1, y1] = this.extent;
      const width = Math.max(x1 - x0 + 2 * ROOM, (y1 - y0 + 2 * ROOM) * wide / high);
      this.view = { x: (x0 + x1 - width) / 2, y: (y0 + y1 - width * high / wide) / 2, width };
    }
    const { x, y, width } = this.view;
    const height = width * high / wide;
    this.svg.setAttribute("viewBox", `${x} ${y} ${width} ${height}`);
    for (const [name, value] of Object.entries({ x, y, width, height })) this.ground.setAttribute(name, value);
    this.svg.style.setProperty("--px", width / wide);
    this.svg.classList.toggle("far", width / wide > 2.4);
  }

  // Where pieces lie: in a row, those of the trunk on common levels.
  places(pieces) {
    const lift = (pair, by) => pair.bounds.map((value, index) => value + by[index % 2]);
    let cursor = 0;
    const first = pieces[0]?.bounds;
    return pieces.map((pair) => {
      const [x0, y0, x1, y1] = pair.bounds;
      const down = /^(back|front)\b/.test(pair.name) ? 0 : first[1] - y0;
      const by = [cursor - x0, down];
      // A little change of one piece does not move those beside it.
      cursor += Math.ceil((x1 - x0 + GAP) / 25) * 25;
      return { by, bounds: lift(pair, by) };
    });
  }

  show(drafted) {
    this.drafted = drafted;
    const { pieces } = drafted;
    const places = this.places(pieces);
    const all = places.map((place) => place.bounds);
    if (all.length) {
      this.extent = [Math.min(...all.map((b) => b[0])), Math.min(...all.map((b) => b[1])),
        Math.max(...all.map((b) => b[2])), Math.max(...all.map((b) => b[3]))];
    }
    const names = pieces.map((pair) => pair.name).join();
    if (names !== this.names) this.fit();
    this.names = names;
    this.cloth.innerHTML = this.printed ? this.image() : pieces.map((pair, index) => this.piece(pair, places[index].by)).join("");
    this.svg.setAttribute("aria-label", `The pattern: ${pieces.map((pair) => words(pair.name)).join(", ")}`);
    this.seen();
    this.light();
    this.list();
    this.overlays();
  }

  image() {
    const { address, width, height } = this.printed;
    this.extent = [0, 0, width, height];
    return `<image href="${address}" width="${width}" height="${height}"/>`;
  }

  piece(pair, [dx, dy]) {
    const { name, after, before, shift } = pair;
    const moved = shift[this.align] ?? [0, 0];
    const move = (x, y) => `transform="translate(${x} ${y})"`;
    let out = `<g ${move(dx, dy)} class="piece">`;
    if (after?.cut_line) out += `<path class="cut" d="${after.cut_line}"/>`;
    if (after) out += `<path class="paper" d="${after.ring}"/>`;
    if (before && this.showBefore) out += `<g class="before" ${move(...moved)}>${outline(before)}</g>`;
    if (after) {
      out += `<g class="after">${outline(after)}${this.words(pair)}</g>`;
      out += after.edges.map((edge) => `<path class="hit" data-piece="${escaped(name)}" data-edge="${escaped(edge.name)}" d="${edge.path}"/>`).join("");
    }
    return `${out}</g>`;
  }

  words({ name, cut, bounds, after }) {
    const [x0, y0, x1, y1] = bounds;
    const levels = after.lines.map((line) => line.at[1]).concat(y0, y1).sort((a, b) => a - b);
    let [widest, at] = [0, (y0 + y1) / 2];
    levels.forEach((level, index) => {
      const gap = (levels[index + 1] ?? level) - level;
      if (gap > widest) [widest, at] = [gap, level + gap / 2];
    });
    const lines = after.lines.map((line) => `<text class="level" x="${line.at[0] + 6}" y="${line.at[1]}" dy="-.35em">${escaped(words(line.name))}</text>`);
    const x = x0 + 0.58 * (x1 - x0);
    return `${lines.join("")}<text class="name" x="${x}" y="${at}">${escaped(title(name))}</text>`
      + `<text class="how" x="${x}" y="${at}" dy="1.5em">${escaped(cut)}</text>`;
  }

  // The edges, for keyboards and for fingers that miss lines.
  list() {
    const options = [["", "Edge …"]];
    for (const { name, after } of this.drafted.pieces) {
      for (const edge of after?.edges ?? []) options.push([`${name}|${edge.name}`, `${words(name)}: ${words(edge.name)}`]);
    }
    const key = options.join(";");
    if (key !== this.listed) {
      this.listed = key;
      this.edges.replaceChildren(select("edge", "Edge", options, this.chosen?.join("|") ?? "",
        (value) => this.choose(value ? value.split("|") : null)));
    }
    const field = this.edges.querySelector("select");
    if (field) field.value = this.chosen?.join("|") ?? "";
  }

  overlays() {
    const altered = this.drafted.pieces.some((pair) => pair.before);
    const key = `${altered}|${this.align}|${this.showBefore}|${Boolean(this.printed)}`;
    if (key === this.overlaid) return;
    this.overlaid = key;
    this.overlay.replaceChildren(...[
      altered && !this.printed && check("before", "Before, grey", this.showBefore, (on) => {
        this.showBefore = on;
        this.show(this.drafted);
      }),
      altered && !this.printed && this.showBefore && select("align", "Laid on", this.settings.aligns.map((a) => [a.name, a.label]),
        this.align, (name) => {
          this.align = name;
          this.show(this.drafted);
        }),
      check("printed", "As it is printed", Boolean(this.printed), (on) => this.settings.print(on)),
    ].filter(Boolean));
  }

  hover(edge) {
    if (same(edge, this.hovered)) return;
    this.hovered = edge;
    this.light();
  }

  choose(edge) {
    this.chosen = edge;
    this.hovered = null;
    this.light();
    this.list();
  }

  partners([piece, edge]) {
    const is = ([a, b]) => a === piece && b === edge;
    for (const seam of this.drafted.seams) {
      for (const [own, other, side] of [["a", "b", "a"], ["b", "a", "b"]]) {
        if (seam[own].some(is)) return { seam, side, edges: seam[other], length: seam[`${other}_length`] };
      }
    }
    return null;
  }

  // The edge and those it is sewn to light up; the readout says what they are.
  light() {
    for (const path of this.cloth.querySelectorAll(".lit, .partner")) path.classList.remove("lit", "partner");
    const edge = this.hovered ?? this.chosen;
    if (!edge || !this.drafted || this.printed) {
      this.readout.textContent = "Point at an edge, or choose one, to see its length and what it is sewn to.";
      return;
    }
    const mark = ([piece, name], kind) => {
      const hit = [...this.cloth.querySelectorAll(".hit")].find((path) => path.dataset.piece === piece && path.dataset.edge === name);
      hit?.classList.add(kind);
    };
    const own = this.drafted.pieces.find((pair) => pair.name === edge[0])?.after?.edges.find((one) => one.name === edge[1]);
    if (!own) {
      this.readout.textContent = "";
      return;
    }
    mark(edge, "lit");
    const unit = this.settings.unit();
    const parts = [`${title(edge[0])}, ${words(edge[1])}: ${length(own.length, unit)}`];
    const partner = this.partners(edge);
    if (partner) {
      for (const other of partner.edges) mark(other, "partner");
      const names = partner.edges.map(([piece, name]) => `${words(piece)} ${words(name)}`).join(" and ");
      parts.push(`sewn to ${names}, ${length(partner.length, unit)}`);
      if (partner.seam.ease > 0) parts.push(`${bare(partner.seam.ease, unit)} ${unit} eased in`);
    } else if (own.role === "fold") parts.push("cut on the fold");
    else if (own.role === "hem") parts.push("a hem");
    this.readout.textContent = parts.join("; ");
  }
}

const same = (a, b) => a === b || Boolean(a && b && a[0] === b[0] && a[1] === b[1]);

function outline(shape) {
  const arrow = ([a, b]) => {
    const [x, y] = [b[0] - a[0], b[1] - a[1]];
    const long = Math.hypot(x, y) || 1;
    const [u, v] = [x / long, y / long];
    const wing = (tip, by) => `M${tip[0] - by * 8 * u - 3 * v} ${tip[1] - by * 8 * v + 3 * u}L${tip[0]} ${tip[1]}`
      + `L${tip[0] - by * 8 * u + 3 * v} ${tip[1] - by * 8 * v - 3 * u}`;
    return `M${a[0]} ${a[1]}L${b[0]} ${b[1]}${wing(b, 1)}${wing(a, -1)}`;
  };
  const paths = (kind, all) => all.map((one) => `<path class="${kind}" d="${one.path}"/>`).join("");
  return paths("guide", shape.lines) + shape.edges.map((edge) => `<path class="edge ${edge.role}" d="${edge.path}"/>`).join("")
    + paths("dart", shape.darts) + `<path class="grain" d="${arrow(shape.grain)}"/>`
    + shape.notches.map(([a, b]) => `<path class="notch" d="M${a[0]} ${a[1]}L${b[0]} ${b[1]}"/>`).join("")
    + shape.points.map(({ at }) => `<path class="point" d="M${at[0] - 5} ${at[1]}h10M${at[0]} ${at[1] - 5}v10"/>`).join("");
}
