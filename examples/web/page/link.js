// Messages to the library itself, as a WebAssembly module beside the page: no server, nothing leaves
// this machine. It works in a thread of its own, so that a long answer keeps nobody from typing.

export function connect() {
  const worker = new Worker(new URL("./worker.js", import.meta.url), { type: "module" });
  const waiting = new Map();
  let number = 0;
  worker.addEventListener("message", ({ data }) => {
    waiting.get(data.number)?.(data.answer);
    waiting.delete(data.number);
  });
  worker.addEventListener("error", () => {
    for (const answer of waiting.values()) answer({ status: "wrong", errors: [{ code: "no_answer", text: "the program stopped at this", cure: "load the page again" }] });
    waiting.clear();
  });
  const ask = (message) => new Promise((answer) => {
    waiting.set(++number, answer);
    worker.postMessage({ number, message });
  });
  return { ask, hello: { folder: null }, here: async () => ({}), save: async () => ({}) };
}
