// Before the first paint: bright sun, units and accent, from this browser or from the address. Nothing is sent.
"use strict";
(() => {
  const root = document.documentElement;
  const asked = new URLSearchParams(location.search);
  for (const name of ["light", "units"]) {
    let kept = null;
    try { kept = localStorage.getItem(name); } catch { /* not allowed here: the page as it came */ }
    if (asked.has(name) || kept === null) continue;
    if (kept) root.dataset[name] = kept; else delete root.dataset[name];
  }
  const accent = asked.get("accent") || "";
  if (/^[0-9a-f]{6}$/i.test(accent)) {
    root.style.setProperty("--accent", "#" + accent);
    const dark = matchMedia("(prefers-color-scheme: dark)").matches;
    const shade = (at) => ((v) => v <= .04045 ? v / 12.92 : ((v + .055) / 1.055) ** 2.4)(parseInt(accent.substr(at, 2), 16) / 255);
    const light = .2126 * shade(0) + .7152 * shade(2) + .0722 * shade(4);
    const paper = dark ? .0072 : .965;
    const contrast = (Math.max(light, paper) + .05) / (Math.min(light, paper) + .05);
    root.classList.toggle("weak-accent", contrast < 3);
  }
})();
