// Messages to the server of this machine, which answers in JSON.
//
// The same page runs without a server: another `link.js` then asks the library as a WebAssembly module.

const KEY = "blockwright-token";

// The token comes in the fragment, which no request carries, and leaves the address bar at once.
function token() {
  const given = location.hash.slice(1);
  if (given) {
    history.replaceState(null, "", location.pathname);
    sessionStorage.setItem(KEY, given);
  }
  return sessionStorage.getItem(KEY) ?? "";
}

function post(message, sent, keepalive = false) {
  return fetch("message", {
    method: "POST", keepalive, cache: "no-store", credentials: "omit",
    headers: { "content-type": "application/json", "x-blockwright-token": sent },
    body: JSON.stringify(message),
  });
}

const lost = (text, cure) => ({ status: "wrong", errors: [{ code: "no_answer", text, cure }] });

export async function connect() {
  let sent = token();
  const ask = async (message) => {
    try {
      const response = await post(message, sent);
      if (response.ok) return await response.json();
      return lost(await response.text(), response.status === 401 ? "open the address that the command printed" : "undo the last change");
    } catch {
      return lost("the command that serves this page has ended", "start it again, and open the new address");
    }
  };
  const page = crypto.randomUUID();
  let hello = await ask({ ask: "hello", page });
  if (hello.token) {
    sent = hello.token;
    sessionStorage.setItem(KEY, sent);
    hello = await ask({ ask: "hello", page });
  }
  addEventListener("pagehide", () => post({ ask: "bye", page }, sent, true).catch(() => {}));
  return {
    ask, hello,
    here: () => ask({ ask: "here", page }),
    save: (files, read) => ask({ ask: "save", files, read }),
  };
}
