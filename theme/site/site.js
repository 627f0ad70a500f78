// Shows one of the texts that stand in the page for each figure, and keeps the choice. It works nothing out.
(() => {
  "use strict";
  const root = document.documentElement;
  const recall = (name) => { try { return localStorage.getItem("packlarder " + name); } catch { return null; } };
  const keep = (name, value) => { try { localStorage.setItem("packlarder " + name, value); } catch { /* holds for this page only */ } };
  const all = (selector) => [...document.querySelectorAll(selector)];

  // Before the page is first painted, so that no white flash meets eyes used to the dark.
  const darken = (on) => root.classList.toggle("night", on);
  darken(recall("night") === "on");

  const offerNight = () => {
    const button = document.getElementById("night");
    const show = (on) => { darken(on); button.setAttribute("aria-pressed", on); };
    button.hidden = false;
    show(recall("night") === "on");
    button.addEventListener("click", () => {
      const on = !root.classList.contains("night");
      show(on);
      keep("night", on ? "on" : "off");
    });
    addEventListener("storage", () => show(recall("night") === "on"));
  };

  const offerFigures = () => {
    const holder = document.getElementById("figures");
    if (!holder) return;
    const { servings, usual, system, rows, metric, us } = JSON.parse(holder.textContent);
    const texts = rows.map((row) => typeof row === "string" ? row.split("|") : row);
    const cells = all("[data-f]").map((cell) => [cell, Number(cell.dataset.f)]);
    let place = usual, units = system;

    const write = (cell, text) => {
      const small = cell.querySelector("small");
      const space = small ? text.lastIndexOf("\u00a0") : -1;
      if (small) {
        if (cell.firstChild === small) cell.prepend("");
        cell.firstChild.data = space < 0 ? text : text.slice(0, space + 1);
        small.textContent = space < 0 ? "" : text.slice(space + 1);
      } else if (cell.textContent !== text) cell.textContent = text;
    };
    const show = () => {
      const numbers = units === "us" ? us : metric;
      for (const [cell, number] of cells) {
        const row = texts[numbers[number]];
        write(cell, row[Math.min(place, row.length - 1)]);
      }
      for (const button of all("[data-in]")) button.setAttribute("aria-pressed", button.dataset.in === units);
      for (const button of all("[data-by]")) button.setAttribute("aria-disabled", !servings[place + Number(button.dataset.by)]);
    };
    const choose = (count, inUnits) => {
      const found = servings.indexOf(Number(count));
      if (found >= 0) place = found;
      if (inUnits === "us" || inUnits === "metric") units = inUnits;
    };
    const follow = () => {
      const said = /^#for-(\d+)-(metric|us)$/.exec(location.hash);
      if (said) choose(said[1], said[2]);
      show();
    };
    const remember = () => {
      show();
      keep("units", units);
      if (servings.length < 2) return;
      keep("servings", servings[place]);
      try { history.replaceState(null, "", `#for-${servings[place]}-${units}`); } catch { /* the address stays as it is */ }
    };

    for (const chooser of all("[data-by], .switch")) chooser.hidden = false;
    for (const box of all(".servings")) box.classList.add("ready");
    document.addEventListener("click", ({ target }) => {
      const { by, in: wanted } = target.dataset ?? {};
      if (wanted) { units = wanted; remember(); }
      if (by && servings[place + Number(by)]) { place += Number(by); remember(); }
    });
    addEventListener("hashchange", follow);
    choose(recall("servings"), recall("units"));
    follow();
  };

  document.addEventListener("DOMContentLoaded", () => { offerNight(); offerFigures(); });
})();
