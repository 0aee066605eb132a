// Lengths as a person writes and reads them. Inside all lengths are millimetres, all angles degrees.

const MM = { mm: 1, cm: 10, in: 25.4 };

// A number with at most so many decimals and no idle zeros.
function decimal(value, places) {
  const text = value.toFixed(places);
  const bare = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return bare === "-0" ? "0" : bare;
}

function inches(mm, parts) {
  const total = Math.round(Math.abs(mm) / 25.4 * parts);
  const sign = mm < 0 && total > 0 ? "-" : "";
  const whole = Math.floor(total / parts);
  let upper = total % parts;
  let lower = parts;
  while (upper > 0 && upper % 2 === 0) [upper, lower] = [upper / 2, lower / 2];
  if (upper === 0) return `${sign}${whole}`;
  return whole === 0 ? `${sign}${upper}/${lower}` : `${sign}${whole} ${upper}/${lower}`;
}

// A length on paper, without its unit: tenths of a millimetre, sixteenths of an inch.
export function bare(mm, unit) {
  if (unit === "in") return inches(mm, 16);
  return decimal(mm / MM[unit], unit === "mm" ? 1 : 2);
}

export function length(mm, unit) {
  return `${bare(mm, unit)} ${unit}`.replace("-", "−");
}

// A measure of an account, in `mm` or `deg`.
export function measure(value, kind, unit, signed = false) {
  if (value === null || value === undefined) return "none";
  const sign = signed && value > 0 ? "+" : "";
  const text = kind === "deg" ? `${decimal(value, 1)}°` : length(value, unit);
  return (sign + text).replace("-", "−");
}

// What was typed, in millimetres: `12`, `1 1/2`, `2,5 cm`, `1 in`. Nothing where it is no length.
export function parse(text, unit) {
  const plain = text.trim().replace(",", ".").replace("−", "-").replace(/″|"$/, " in").replace(/½/g, " 1/2")
    .replace(/¼/g, " 1/4").replace(/¾/g, " 3/4");
  const found = /^([+-]?)\s*(?:(?:(\d+)\s+)?(\d+)\/(\d+)|(\d+\.?\d*|\.\d+))\s*(mm|cm|in|inch|inches)?$/.exec(plain);
  if (!found) return undefined;
  const [, sign, whole, upper, lower, number, own] = found;
  const value = number ? Number(number) : Number(whole ?? 0) + Number(upper) / Number(lower);
  const mm = value * MM[own ? (own.startsWith("in") ? "in" : own) : unit];
  return Number.isFinite(mm) ? (sign === "-" ? -mm : mm) : undefined;
}

// What is said of a text that is no length, no angle or no share.
const FORMS = { mm: "a length; write it as 12, 12.5 or 1 1/2 in", deg: "an angle; write it as 3 or 2.5", share: "a share; write it as 0.5" };
export const notRead = (text, kind) => `${text.trim().slice(0, 20)} is not ${FORMS[kind]}`;

// How far one press of a key moves a slider.
export const step = (kind, unit) => kind === "deg" ? 0.5 : unit === "in" ? 25.4 / 16 : 1;

export const counted = (count, noun) => `${count} ${noun}${count === 1 ? "" : "s"}`;

export const words = (name) => name.replaceAll("_", " ");
export const title = (name) => {
  const text = words(name);
  return text.charAt(0).toUpperCase() + text.slice(1);
};
