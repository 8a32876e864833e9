// <leadsman-sheet>: the question page of the battery desk in a frame on this page. One script tag puts it here.
"use strict";
(() => {
  const script = document.currentScript, home = new URL(script.src).origin;
  const CSS = `:host{all:initial;display:block;font:16px/1.4 system-ui,sans-serif;color-scheme:light dark}
    .box{position:relative;min-height:420px;border:2px solid #0d1e28;background:#fcfbf6;box-sizing:border-box}
    iframe{display:block;width:100%;height:420px;border:0;visibility:hidden}
    .ready iframe{visibility:visible}.ready .link{display:none}
    .link{position:absolute;inset:0;padding:20px;color:#0a486b;font-weight:700}
    .refused iframe{display:none}.refused.box,.refused .link{min-height:0;position:static}
    .refused .link{display:block}
    .tab{all:unset;box-sizing:border-box;display:block;position:fixed;inset:auto 0 0;height:52px;padding:6px 16px;z-index:2147483000;
      border-top:6px solid #8fcdec;background:#0d1e28;color:#fcfbf6;font-weight:700;line-height:34px;cursor:pointer}
    .tab small{float:right;font-weight:400;text-decoration:underline}
    .tab:focus-visible{outline:3px solid #fcfbf6;outline-offset:-6px}
    .docked .box{position:fixed;inset:auto 0 52px auto;width:416px;height:calc(100vh - 52px);min-height:0;z-index:2147483000;display:none}
    .docked.open .box{display:block}.docked iframe{height:100%}
    @media (max-width:61.99em){.docked .box{width:100%;height:calc(100vh - 100px);height:calc(100dvh - 100px)}}
    @media (prefers-color-scheme:dark){.box{background:#0b151b;border-color:#8099a6}.link{color:#8fcdec}}
    @media print{.tab,.docked .box{display:none}}`;
  const styled = (shadow, accent) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(CSS + (accent ? `.tab{border-top-color:#${accent}}` : ""));
    shadow.adoptedStyleSheets = [sheet];
  };
  const made = (kind, css, text) => Object.assign(document.createElement(kind), { className: css, textContent: text || "" });

  customElements.define("leadsman-sheet", class extends HTMLElement {
    connectedCallback() {
      if (this.box) return;
      const { place = "inline", house = "", units = "", ask = "", accent = "" } = this.dataset;
      const docked = place === "docked", shadow = this.attachShadow({ mode: "closed" });
      this.nonce = [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
      const hue = /^#?([0-9a-f]{6})$/i.exec(accent), title = "Battery questions" + (house ? ", " + house : "");
      const query = new URLSearchParams({ frame: docked ? "docked" : "inline", host: location.origin, nonce: this.nonce });
      for (const [name, value] of [["units", units], ["label", ask], ["accent", hue ? hue[1] : ""]]) if (value) query.set(name, value);
      styled(shadow, hue && hue[1]);
      this.all = made("div", docked ? "docked" : ""); this.box = made("div", "box");
      this.frame = made("iframe"); this.frame.title = title; this.frame.src = `${home}/?${query}`;
      const link = made("a", "link", title); link.href = home + "/";
      this.box.append(link, this.frame); this.all.append(this.box);
      if (docked) this.dock(title);
      shadow.append(this.all);
      this.heard = (event) => this.hear(event);
      addEventListener("message", this.heard);
      // A page that may not show the sheet never hears from it: the plain link stays.
      this.frame.addEventListener("load", () => setTimeout(() => {
        if (!this.box.classList.contains("ready")) { this.box.classList.add("refused"); this.frame.remove(); }
      }, 3000));
    }
    disconnectedCallback() { removeEventListener("message", this.heard); if (this.tab) this.room(0, 0); }
    hear({ source, origin, data }) {
      if (source !== this.frame.contentWindow || origin !== home || !data || data.sheet !== this.nonce) return;
      if (data.what === "height") {
        this.box.classList.add("ready");
        const height = Math.min(Math.max(Number(data.height) || 0, 420), 20000);
        if (!this.tab) this.frame.style.height = height + "px";
      } else if (data.what === "close" && this.tab) this.show(false);
    }
    dock(title) {
      this.box.role = "region"; this.box.ariaLabel = title;
      this.tab = made("button", "tab", title); this.away = made("small", "", "put away");
      this.away.hidden = true; this.tab.append(this.away);
      this.tab.type = "button"; this.tab.ariaExpanded = "false";
      this.tab.addEventListener("click", () => this.show(!this.all.classList.contains("open")));
      this.all.addEventListener("keydown", (event) => { if (event.key === "Escape") this.show(false); });
      this.all.append(this.tab);
      this.room(0, 52);
    }
    show(open) {
      const wide = matchMedia("(min-width:62em)").matches;
      this.all.classList.toggle("open", open);
      this.tab.ariaExpanded = String(open); this.away.hidden = !open;
      this.box.role = open && !wide ? "dialog" : "region"; this.box.ariaModal = open && !wide ? "true" : null;
      this.room(open && wide ? 416 : 0, 52);
      for (let at = this; at !== document.body && at.parentNode; at = at.parentNode)
        for (const other of at.parentNode.children) if (other !== at) other.inert = open && !wide;
      if (!open) return this.tab.focus();
      this.frame.focus();
      if (this.frame.contentWindow) this.frame.contentWindow.postMessage({ sheet: this.nonce, what: "open" }, home);
    }
    room(side, foot) { // the open sheet stands beside the page and the tab below it, so that neither hides anything
      document.body.style.paddingRight = side ? side + "px" : ""; document.body.style.paddingBottom = foot ? foot + "px" : "";
    }
  });
  if (document.querySelector("leadsman-sheet")) return; // the page has its own
  const sheet = document.createElement("leadsman-sheet");
  Object.assign(sheet.dataset, script.dataset);
  script.after(sheet);
})();
