// What stands on the page of the browser shell, and what a person would do next about it.

/**
 * @typedef {{ do: "press" | "hold", what: string, at: string }
 *   | { do: "photograph", title: string, at: string }
 *   | { do: "choose", field: string, options: { label: string, at: string }[] }
 *   | { do: "type", field: string, at: string }
 *   | { do: "skip-wait", at: string }
 *   | { do: "stop-alarm", what: string, at: string }
 *   | { do: "stuck", why: string }} Move
 */

/**
 * The first thing that the page offers, as someone would see it who reads from the top. Runs inside of the page.
 * @returns {Move}
 */
export function look() {
  /** A selector of just this element. @param {Element} element @returns {string} */
  const at = (element) => {
    const parent = element.parentElement;
    if (!parent) return element.tagName.toLowerCase();
    return `${at(parent)} > :nth-child(${[...parent.children].indexOf(element) + 1})`;
  };
  /** @param {Element} element */
  const words = (element) => (element.textContent ?? "").replace(/\s+/g, " ").trim();
  /** @param {Element} button @returns {Move} */
  const press = (button) => ({ do: button.classList.contains("hold") ? "hold" : "press", what: words(button), at: at(button) });
  /** @param {string} selector @param {ParentNode} [root] */
  const find = (selector, root = document) => root.querySelector(selector);

  const alarm = find("dialog.alarm-sheet[open] .button");
  if (alarm) return { do: "stop-alarm", what: words(find("#alarm-text") ?? alarm), at: at(alarm) };
  const finder = find("dialog.photo-sheet[open]");
  if (finder) {
    const file = find("label.file", finder);
    const title = words(find("h2", finder) ?? finder);
    return file ? { do: "photograph", title, at: at(file) } : { do: "stuck", why: `the photograph '${title}' is not taken in` };
  }
  if (find("main.state")) return { do: "stuck", why: words(find("main.state") ?? document.body) };
  // A plain one tells; it asks for nothing.
  for (const notice of document.querySelectorAll("main > .notice:not(.tone-plain)")) {
    const button = find(".button:not(.tone-quiet)", notice);
    return button ? press(button) : { do: "stuck", why: words(notice) };
  }

  for (const step of document.querySelectorAll(".step-open, .step-running")) {
    const later = find(".dwell-waiting", step) !== null; // what is measured during the wait is measured then
    for (const choice of step.querySelectorAll(".choice")) {
      if (find(".option.chosen", choice)) continue;
      const options = [...choice.querySelectorAll(".option")].map((option) => ({ label: words(option), at: at(option) }));
      return { do: "choose", field: (find(".field-label", choice)?.id ?? "").replace("choice-", ""), options };
    }
    for (const field of step.querySelectorAll(".field")) {
      const input = /** @type {HTMLInputElement | null} */ (find("input, textarea", field));
      if (!input) continue;
      const question = find(".question .button", field);
      if (question) return press(question);
      if (find(".problem", field)) return { do: "stuck", why: words(field) };
      const open = field.classList.contains("number") ? !field.classList.contains("taken") : input.value === "";
      if (open && !(later && input.value === "")) return { do: "type", field: input.id.replace("field-", ""), at: at(input) };
    }
    const button = find(".run-button .button:not(.tone-quiet)", step);
    if (button) return press(button);
    const shot = later ? null : find(".shot:not(.has) .row .button", step);
    if (shot) return press(shot);
    const tick = find(".check[aria-checked=false]", step);
    if (tick) return press(tick);
  }
  const leap = find("main .dwell-running > .button");
  if (leap) return { do: "skip-wait", at: at(leap) };
  const main = find(".foot > .main");
  return main ? press(main) : { do: "stuck", why: "nothing is offered" };
}

/** All words of the page for people: what is seen, and what a screen reader says. Runs inside of the page. @returns {string} */
export function allWords() {
  const said = [...document.querySelectorAll("[aria-label], [alt], [title]")].map((element) =>
    ["aria-label", "alt", "title"].map((name) => element.getAttribute(name) ?? "").join(" "),
  );
  return [document.title, document.body.innerText, ...said].join("\n");
}
