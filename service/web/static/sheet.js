// The sheet without reloading: the same forms, the same entries from the server, put at the foot of the sheet.
"use strict";
(() => {
  const MOST = 20000, OPEN = 8, WAIT = 400;
  const $ = (what, where = document) => where.querySelector(what);
  const all = (what, where = document) => [...where.querySelectorAll(what)];
  const root = document.documentElement, main = $("#main"), log = $("#log"), form = $("#ask"), field = $("#q");
  const alert = $("#alert"), framed = "frame" in root.dataset;
  let last = null, busy = false;

  const say = (text) => { const line = $("#status"); if (line) line.textContent = text; };
  const keep = (name, value) => { try { value ? sessionStorage.setItem(name, value) : sessionStorage.removeItem(name); } catch { /* kept on the page only */ } };
  const kept = (name) => { try { return sessionStorage.getItem(name); } catch { return null; } };

  // ---- times as the clock here shows them
  const clocks = (where) => all("time[datetime]", where).forEach((time) => {
    const here = new Date(time.dateTime), inner = $("b", time) || time;
    if (!isNaN(here)) inner.textContent = here.toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", hour12: false });
  });

  // ---- asking
  const trouble = (text) => {
    $("#q-trouble").textContent = text;
    form.classList.toggle("bad", Boolean(text));
    text ? field.setAttribute("aria-invalid", "true") : field.removeAttribute("aria-invalid");
    if (text) field.focus();
  };
  const failed = (strong, text) => {
    const box = document.createElement("div"), line = document.createElement("p"), row = document.createElement("p");
    box.className = "trouble"; row.className = "row";
    const lead = document.createElement("b");
    lead.textContent = strong;
    line.append(lead, " " + text);
    const button = document.createElement("button");
    button.className = "go"; button.type = "button"; button.textContent = "Send it again";
    button.addEventListener("click", () => last && send(...last));
    row.append(button);
    if (alert.dataset.tel) {
      const call = document.createElement("a");
      call.href = "tel:" + alert.dataset.tel.replace(/ /g, ""); call.textContent = alert.dataset.tel;
      row.append(" or call the desk: ", call);
    }
    box.append(line, row);
    alert.replaceChildren(box);
  };
  const waiting = (text) => {
    const entry = document.createElement("section");
    entry.innerHTML = '<div class="entry on-line"><p class="asked"><span class="stamp"><time><b></b></time></span> <span class="hand" dir="auto"></span></p><p class="wait"></p></div>';
    $(".hand", entry).textContent = text;
    $("time", entry).dateTime = new Date().toISOString();
    clocks(entry);
    log.append(entry);
    entry.scrollIntoView({ block: "nearest" });
    const timer = setTimeout(() => {
      $(".wait", entry).innerHTML = '<svg class="mark" aria-hidden="true"><use href="#m-info"/></svg>Working it out';
      say("Working it out");
    }, WAIT);
    return () => { clearTimeout(timer); entry.remove(); say(""); };
  };
  const send = async (address, body, text) => {
    if (busy) return;
    busy = true; last = [address, body, text];
    trouble(""); alert.replaceChildren();
    const done = waiting(text);
    try {
      const reply = await fetch(address, { method: "POST", body, headers: { Sheet: "entry" } });
      done();
      if (reply.ok) taken(await reply.text());
      else if (reply.status === 400 || reply.status === 413) trouble(reply.status === 413 ? tooLong(text.length) : (await reply.json()).detail);
      else failed("That did not go through.", "The fault is ours; your question is kept.");
    } catch {
      done();
      keep("draft", field.value);
      failed("No connection.", "Your question is kept on this page. Send it again when you are back in reach.");
    }
    busy = false;
  };
  const tooLong = (count) => `That is ${count.toLocaleString("en")} characters; we read at most 20,000. Shorten it, or ask in parts.`;

  // ---- an entry has come: it replaces the one before (now folded) and itself, as the server wrote them
  const taken = (html) => {
    const old = $(":scope > .newest", log);
    if (old) old.remove();
    put(html);
    field.value = ""; keep("draft", ""); last = null;
    const newest = $(":scope > .newest", log), heading = $("h2", newest);
    if (heading) heading.focus({ preventScroll: true });
    newest.scrollIntoView({ block: "start" });
  };
  const put = (html) => {
    const box = document.createElement("template");
    box.innerHTML = html;
    clocks(box.content);
    log.append(box.content);
    main.classList.add("begun");
    const newest = $(":scope > .newest", log);
    if (!newest) return;
    for (const name of ["thread", "entries"]) {
      all(`input[name="${name}"]`).forEach((input) => { input.value = newest.dataset[name]; });
      keep(name, newest.dataset[name]);
    }
    const folded = all(":scope > .folded", log);
    const spare = folded.slice(0, Math.max(0, folded.length + 1 - OPEN));
    if (spare.length) {
      let earlier = $(":scope > .earlier", log);
      if (!earlier) {
        earlier = document.createElement("details");
        earlier.className = "open earlier on-line";
        earlier.innerHTML = '<summary><span>Earlier on this sheet (<span class="sum"></span>)</span></summary><div></div>';
        log.prepend(earlier);
      }
      $(":scope > div", earlier).append(...spare);
      $(".sum", earlier).textContent = all(".folded", earlier).length;
    }
  };

  document.addEventListener("submit", (event) => {
    const sent = event.target, button = event.submitter, to = new URL(sent.action, location.href);
    if (sent.method !== "post" || !form) return;
    if (button && button.dataset.set) { event.preventDefault(); return; }
    const body = new URLSearchParams(new FormData(sent, button));
    if (to.pathname !== "/") { event.preventDefault(); tell(sent, to, body); return; }
    event.preventDefault();
    const text = body.get("text");
    if (sent === form && !text.trim()) return trouble("Nothing is written here yet. One line is enough.");
    if (sent === form && text.length > MOST) return trouble(tooLong(text.length));
    const shown = text || (button && button.classList.contains("tick") ? button.firstChild.textContent.trim() : "Same, with what you changed");
    send(sent.action, body, shown);
  });

  // ---- feedback and hand-over
  const tell = async (sent, to, body) => {
    try {
      const reply = await fetch(to, { method: "POST", body, headers: { Sheet: "word" } });
      if (!reply.ok) throw new Error((await reply.json()).detail);
      const thanks = await reply.text(), line = document.createElement("p");
      line.className = "part done"; line.tabIndex = -1; line.textContent = thanks;
      const word = sent.nextElementSibling;
      if (body.get("helped") === "no" && word && word.classList.contains("word") && sent !== word) {
        word.hidden = false; $("input[name=word]", word).focus(); say(thanks);
        return;
      }
      if (word && word.classList.contains("word")) word.remove();
      say(""); sent.replaceChildren(line); line.focus();
    } catch (error) {
      failed("That did not go through.", error instanceof TypeError ? "There is no connection." : error.message);
      $("#alert .go").remove();
    }
  };

  // ---- tags, switches, keys, copying
  document.addEventListener("toggle", (event) => {
    const chip = event.target;
    if (!chip.classList || !chip.classList.contains("chip") || !chip.open) return;
    const inner = $("input[type=text], select", chip);
    if (inner) { inner.focus(); if (inner.select) inner.select(); }
  }, true);
  document.addEventListener("keydown", (event) => {
    const chip = event.key === "Escape" && event.target.closest && event.target.closest(".chip[open]");
    if (chip) { chip.open = false; $("summary", chip).focus(); event.stopPropagation(); }
    else if (event.key === "Escape") post("close");
    else if (event.target === field && event.key === "Enter" && !event.shiftKey && !event.isComposing) { event.preventDefault(); form.requestSubmit(); }
  });
  const set = (name, value) => {
    value ? root.dataset[name] = value : delete root.dataset[name];
    try { localStorage.setItem(name, value); } catch { /* for this page only */ }
    pressed();
  };
  const pressed = () => all("[data-set]").forEach((button) => {
    const now = root.dataset[button.dataset.set] || "";
    button.setAttribute("aria-pressed", String(button.dataset.set === "light" ? now === "sun" : now === button.value));
  });
  document.addEventListener("click", (event) => {
    const at = event.target.closest("[data-set], [data-copy], [data-print], [data-clean], [data-close]");
    if (!at) return;
    if (at.dataset.set === "light") { event.preventDefault(); set("light", root.dataset.light === "sun" ? "" : "sun"); }
    else if (at.dataset.set) { event.preventDefault(); set("units", at.value); }
    else if ("copy" in at.dataset && navigator.clipboard && !framed) { event.preventDefault(); copy(at); }
    else if ("print" in at.dataset && !framed) { event.preventDefault(); print(); }
    else if ("clean" in at.dataset) { keep("thread", ""); keep("entries", ""); keep("draft", ""); }
    else if ("close" in at.dataset) post("close");
  });
  const copy = async (link) => {
    try {
      await navigator.clipboard.writeText(await (await fetch(link.href)).text());
      say("Copied as text"); link.textContent = "Copied";
      setTimeout(() => { link.textContent = "Copy as text"; }, 3000);
    } catch { location.assign(link.href); }
  };

  // ---- in a frame: tell the host page our height, nothing else
  const here = new URLSearchParams(location.search), host = here.get("host"), nonce = here.get("nonce");
  const post = (what, more) => {
    if (framed && host && nonce && parent !== window) parent.postMessage({ sheet: nonce, what, ...more }, host);
  };
  if (framed && host && nonce && parent !== window) {
    new ResizeObserver(() => post("height", { height: Math.ceil(document.body.getBoundingClientRect().height) })).observe(document.body);
    addEventListener("message", (event) => {
      if (event.source === parent && event.origin === host && event.data && event.data.sheet === nonce && event.data.what === "open" && field) field.focus();
    });
  }

  // ---- at the start: clock, buttons, and the sheet of this tab where one was left
  clocks(document); pressed();
  const entries = kept("entries");
  if (form && !log.children.length && entries) {
    fetch("/?sheet=" + encodeURIComponent(entries), { headers: { Sheet: "all" } }).then((reply) => reply.text()).then((html) => {
      if (!html.includes("data-thread") || log.children.length) return;
      const thread = kept("thread");
      put(html);
      all('input[name="thread"]').forEach((input) => { input.value = thread; });
      keep("thread", thread);
    }).catch(() => {});
  }
  if (form && !field.value && kept("draft")) field.value = kept("draft");
})();
