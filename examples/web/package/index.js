// blockwright for JavaScript: messages in, answers out. Nothing leaves the program that asks.

/** Loads the module from its bytes, a response, or an address. */
export async function load(source = new URL("./blockwright.wasm", import.meta.url)) {
  const { instance } = source instanceof ArrayBuffer || ArrayBuffer.isView(source)
    ? await WebAssembly.instantiate(source, {})
    : await fromResponse(source instanceof Response ? source : await fetch(source));
  return new Blockwright(instance.exports);
}

// Some hosts do not say that it is WebAssembly.
async function fromResponse(response) {
  return response.headers.get("content-type") === "application/wasm"
    ? WebAssembly.instantiateStreaming(response, {})
    : WebAssembly.instantiate(await response.arrayBuffer(), {});
}

export class Blockwright {
  #exports;

  constructor(exports) {
    this.#exports = exports;
  }

  /** Answers a message; an answer whose `status` is not `ok` has `errors`. */
  ask(message) {
    const { memory, room, ask } = this.#exports;
    const bytes = new TextEncoder().encode(JSON.stringify(message));
    // Looked at as unsigned: the module may use more than half of what 32 bits reach.
    const at = room(bytes.length) >>> 0;
    new Uint8Array(memory.buffer, at, bytes.length).set(bytes);
    const bits = BigInt.asUintN(64, ask());
    const answer = new Uint8Array(memory.buffer, Number(bits >> 32n), Number(bits & 0xffffffffn));
    return JSON.parse(new TextDecoder().decode(answer));
  }
}

/** The bytes of a file in an answer. */
export const bytes = (file) => Uint8Array.from(atob(file.data), (c) => c.charCodeAt(0));
