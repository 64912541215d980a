"use strict";
(() => {
  const plans = JSON.parse(document.getElementById("plans").textContent);
  const LISTS = ["buy", "do", "faults"];
  const one = (where, what) => where.querySelector(what);
  const all = (where, what) => Array.from(where.querySelectorAll(what));

  // Every distinct row was written once: in the list of the plan at hand, or in a template.
  const rows = {};
  for (const name of LISTS) {
    const spare = document.getElementById("spare-" + name);
    const found = all(document.getElementById(name), "[data-row]");
    rows[name] = new Map();
    for (const row of found.concat(spare ? all(spare.content, "[data-row]") : [])) {
      rows[name].set(Number(row.dataset.row), row);
    }
  }

  // Ticks are kept by job and by row, where the viewer lets a page keep anything.
  const boxes = ["buy", "do"].flatMap((name) => Array.from(rows[name].values()).flatMap((row) => all(row, "[data-tick]")));
  const key = (box) => "budgetfix " + plans.job + " " + box.dataset.tick;
  let store = null;
  try {
    store = window.localStorage;
    store.setItem("budgetfix", "keeps");
    store.removeItem("budgetfix");
  } catch (refused) {
    store = null;
  }
  const refuse = () => { one(document, ".kept").hidden = false; };
  const count = () => {
    for (const name of ["buy", "do"]) {
      const list = document.getElementById(name);
      const here = all(list, "[data-tick]").filter((box) => !box.closest(".other"));
      const line = one(list, ".ticked");
      line.hidden = here.length === 0;
      line.textContent = here.filter((box) => box.checked).length + " of " + here.length + (name === "buy" ? " bought" : " done");
    }
  };
  const tick = (box) => {
    for (const twin of boxes) {
      if (twin.dataset.tick === box.dataset.tick) { twin.checked = box.checked; }
    }
    try {
      if (store && box.checked) { store.setItem(key(box), "1"); }
      if (store && !box.checked) { store.removeItem(key(box)); }
    } catch (full) {
      refuse();
    }
    count();
  };
  for (const box of boxes) {
    box.checked = store !== null && store.getItem(key(box)) === "1";
    box.addEventListener("change", () => tick(box));
  }
  if (boxes.length && !store) { refuse(); }
  count();

  // Whose list is shown: everybody's, one person's, or what several do at once. Paper shows all.
  const choices = all(document, "[data-whose], [data-together]");
  let chosen = choices[0];
  const sift = () => {
    if (!chosen) { return; }
    const whose = chosen.dataset.whose;
    for (const row of all(document, "#do .row")) {
      const who = row.dataset.who ? row.dataset.who.split("\n") : [];
      const mine = whose === "" || (whose === undefined ? who.length > 1 : who.includes(whose));
      row.classList.toggle("other", !mine);
    }
    for (const group of all(document, "#do .group")) {
      group.classList.toggle("other", all(group, ".row:not(.other)").length === 0);
      one(group, ".note").classList.toggle("other", whose !== "");
    }
    for (const choice of choices) { choice.setAttribute("aria-pressed", choice === chosen); }
    count();
  };
  for (const choice of choices) {
    choice.addEventListener("click", () => { chosen = choice; sift(); });
  }

  const fill = (name, groups, empty) => {
    const list = document.getElementById(name);
    let number = 0;
    const made = groups.map(([heading, note, at, times]) => {
      const group = document.getElementById("group").content.firstElementChild.cloneNode(true);
      one(group, ".heading").textContent = heading;
      one(group, ".note").textContent = note;
      for (const [nth, place] of at.entries()) {
        const row = rows[name].get(place);
        const time = one(row, ".time");
        if (time) { time.textContent = times ? times[nth] : ""; }
        const circle = one(row, ".number");
        number += 1;
        if (circle) { circle.textContent = number; }
        one(group, "ol").append(row);
      }
      return group;
    });
    one(list, ".groups").replaceChildren(...made);
    one(list, ".none").hidden = !empty;
    one(list, ".none").textContent = empty;
  };

  const judge = (stop) => {
    const list = document.getElementById("faults");
    const made = stop.faults.map((place, at) => {
      const row = rows.faults.get(place);
      const [after, points, state, look] = plans.now[stop.now[at]];
      one(row, ".after bdi").textContent = after;
      one(row, ".left").textContent = points;
      one(row, ".now").textContent = state;
      one(row, ".now").className = "now " + look;
      return row;
    });
    one(list, "tbody").replaceChildren(...made);
    one(list, "table").hidden = made.length === 0;
    one(list, ".none").hidden = made.length > 0;
  };

  const slide = document.getElementById("slide");
  const show = (at) => {
    const stop = plans.stops[at];
    slide.value = at;
    slide.setAttribute("aria-valuetext", stop.said);
    all(document, ".figure").forEach((figure, place) => { figure.textContent = stop.tiles[place]; });
    all(document, ".bars rect").forEach((bar, place) => { bar.classList.toggle("on", place === at); });
    all(document, "[data-stop]").forEach((jump) => { jump.setAttribute("aria-pressed", Number(jump.dataset.stop) === at); });
    all(document, ".shown").forEach((name) => { name.textContent = stop.money; });
    document.body.classList.toggle("elsewhere", at !== plans.own);
    all(document, ".away").forEach((line) => { line.hidden = at === plans.own; });
    fill("buy", stop.buy, stop.no_buy);
    fill("do", stop.do, stop.no_do);
    one(document, ".total").textContent = stop.total + ".";
    one(document, ".change").textContent = stop.change;
    one(document, ".change").hidden = !stop.change;
    judge(stop);
    sift();
    count();
  };
  for (const part of all(document, ".control")) { part.hidden = false; }
  document.getElementById("print").addEventListener("click", () => window.print());
  if (slide) {
    slide.addEventListener("input", () => show(Number(slide.value)));
    for (const jump of all(document, "[data-stop]")) {
      jump.addEventListener("click", () => show(Number(jump.dataset.stop)));
    }
    show(plans.own);
  }
})();
