import { load } from "./package/index.js";

const library = load();

addEventListener("message", async ({ data: { number, message } }) => {
  postMessage({ number, answer: (await library).ask(message) });
});
