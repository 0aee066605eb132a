// Usage: node run.mjs MODULE.wasm COUNT       summaries of the first jobs, to standard output
//        node run.mjs MODULE.wasm whole N     the files of job N
import { readFileSync } from "node:fs";

const [path, first, second] = process.argv.slice(2);
const { instance } = await WebAssembly.instantiate(readFileSync(path), {});
const { memory, summary, whole } = instance.exports;

function text(handed) {
  const bits = BigInt.asUintN(64, handed);
  const at = Number(bits >> 32n);
  const length = Number(bits & 0xffffffffn);
  return new TextDecoder().decode(new Uint8Array(memory.buffer, at, length));
}

if (first === "whole") {
  process.stdout.write(text(whole(Number(second))));
} else {
  for (let number = 0; number < Number(first); number += 1) {
    process.stdout.write(text(summary(number)));
  }
}
