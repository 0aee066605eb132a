// The small parts that all panels are made of.

let count = 0;

// An element: attributes by name, `on...` as listeners, children as nodes or texts.
export function h(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === null || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else if (name === "value" || name === "checked" || name === "selected") element[name] = value;
    else element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...children.flat(Infinity).filter((child) => child !== null && child !== undefined && child !== false));
  return element;
}

export const fresh = (name) => `${name}-${count++}`;

// Puts new content in place of the old; who was typing goes on typing.
export function refill(element, ...children) {
  const active = document.activeElement;
  const id = element.contains(active) ? active.id : "";
  const ends = id && "selectionStart" in active ? safely(() => [active.selectionStart, active.selectionEnd]) : null;
  const scroll = element.scrollTop;
  element.replaceChildren(...children.flat(Infinity).filter(Boolean));
  element.scrollTop = scroll;
  const again = id && document.getElementById(id);
  if (!again) return;
  again.focus({ preventScroll: true });
  if (ends && ends[0] !== null) safely(() => again.setSelectionRange(...ends));
}

// What `act` gives, or null where the browser refuses.
export function safely(act) {
  try {
    return act();
  } catch {
    return null;
  }
}

export const escaped = (text) => String(text).replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);

export function button(label, act, more = {}) {
  return h("button", { type: "button", onclick: act, ...more }, label);
}

// A choice of one among few: [value, label] pairs.
export function choice(id, legend, options, chosen, choose) {
  return h("fieldset", { class: "choice" }, h("legend", {}, legend),
    options.map(([value, label]) => h("label", { class: "pick" },
      h("input", {
        type: "radio", name: id, id: `${id}-${value}`, value, checked: value === chosen,
        onchange: () => choose(value),
      }), h("span", {}, label))));
}

export function select(id, label, options, chosen, choose, more = {}) {
  return h("label", { class: "field", for: id }, h("span", {}, label),
    h("select", { id, onchange: (event) => choose(event.target.value), ...more },
      options.map(([value, text]) => h("option", { value, selected: value === chosen }, text))));
}

export function check(id, label, checked, choose) {
  return h("label", { class: "check", for: id },
    h("input", { type: "checkbox", id, checked, onchange: (event) => choose(event.target.checked) }), h("span", {}, label));
}

// A field for text. `tell` says what is wrong with what is typed, or nothing.
export function field(id, label, value, { input, change, unit, hint, wrong, ...more } = {}) {
  const noted = [hint && `${id}-hint`, wrong && `${id}-wrong`].filter(Boolean).join(" ");
  return h("div", { class: "field" }, h("label", { for: id }, label),
    h("span", { class: "entry" },
      h("input", {
        id, type: "text", value, autocomplete: "off", spellcheck: "false",
        "aria-invalid": wrong ? "true" : undefined, "aria-describedby": noted || undefined,
        oninput: input && ((event) => input(event.target.value)),
        onchange: change && ((event) => change(event.target.value, event.target)), ...more,
      }), unit && h("span", { class: "unit" }, unit)),
    hint && h("span", { class: "hint", id: `${id}-hint` }, hint),
    wrong && h("span", { class: "wrong", id: `${id}-wrong` }, wrong));
}

export function table(caption, head, rows, kind = "numbers") {
  return h("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": caption },
    h("table", { class: kind }, h("caption", {}, caption),
      h("thead", {}, h("tr", {}, head.map((text) => text ? h("th", { scope: "col" }, text) : h("td", {})))),
      h("tbody", {}, rows.map((cells) => h("tr", { class: cells.mark || null },
        cells.map((cell, index) => h(index === 0 ? "th" : "td", index === 0 ? { scope: "row" } : {}, cell)))))));
}

export function problems(errors) {
  return h("ul", { class: "problems", role: "alert" }, errors.map((error) =>
    h("li", {}, error.line ? `Line ${error.line}: ` : "", error.text,
      error.cure && !error.text.includes(error.cure) ? h("span", { class: "cure" }, `; ${error.cure}.`) : null)));
}

// Hands a file to whoever is at the page.
export function download(name, content, kind) {
  const address = URL.createObjectURL(content instanceof Blob ? content : new Blob([content], { type: kind }));
  const link = h("a", { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

export function blob(file) {
  const bytes = Uint8Array.from(atob(file.data), (c) => c.charCodeAt(0));
  return new Blob([bytes], { type: file.type });
}

export function notice(text) {
  const line = document.getElementById("notice");
  line.textContent = text;
}
