// A tree of plain data is drawn onto the document: what is already there stays, so focus, caret and scroll stay too.

/** @typedef {{ tag: string, key: string | null, props: Props, children: Child[] }} Node_ */
/** @typedef {Node_ | string} Child */
/**
 * Attributes by name, and: `key`, `on` (listeners), `vars` (custom CSS properties), `value` (of a field), and
 * `mount`, called once when the element was made.
 * @typedef {{ [name: string]: any }} Props
 */

const SVG = 'http://www.w3.org/2000/svg';
const SPECIAL = new Set(['key', 'on', 'vars', 'value', 'mount']);

/** @type {WeakMap<Element, { key: string | null, props: Props, on: Record<string, (event: any) => void> }>} */
const drawn = new WeakMap();

/**
 * One element to draw.
 * @param {string} tag
 * @param {Props | null} props
 * @param {...(Child | null | false | undefined | (Child | null | false | undefined)[])} children
 * @returns {Node_}
 */
export function h(tag, props, ...children) {
  /** @type {Child[]} */
  const kept = [];
  for (const child of children.flat()) if (child !== null && child !== false && child !== undefined) kept.push(child);
  return { tag, key: props?.key ?? null, props: props ?? {}, children: kept };
}

/**
 * Draws `nodes` as the children of `parent`.
 * @param {Element} parent
 * @param {Child[]} nodes
 */
export function draw(parent, nodes) {
  const focused = document.activeElement;
  const id = focused?.id;
  children(parent, nodes);
  if (id && document.activeElement !== focused) document.getElementById(id)?.focus({ preventScroll: true });
}

/** @param {Element} parent @param {Child[]} nodes */
function children(parent, nodes) {
  /** @type {Map<string, Element>} */
  const byKey = new Map();
  /** @type {ChildNode[]} */
  const loose = [];
  for (const child of Array.from(parent.childNodes)) {
    const key = child instanceof Element ? drawn.get(child)?.key : null;
    if (child instanceof Element && key) byKey.set(key, child);
    else loose.push(child);
  }
  const wanted = nodes.map((node) => match(node, byKey, loose));
  const kept = new Set(wanted);
  for (const child of Array.from(parent.childNodes)) if (!kept.has(child)) child.remove();
  let at = parent.firstChild;
  wanted.forEach((found, index) => {
    const node = /** @type {Child} */ (nodes[index]);
    const child = found ?? make(node, parent);
    if (child === at) at = at.nextSibling;
    else parent.insertBefore(child, at);
    if (typeof node === 'string') {
      if (child.nodeValue !== node) child.nodeValue = node;
    } else update(/** @type {Element} */ (child), node);
  });
}

/**
 * The child that already stands for `node`.
 * @param {Child} node @param {Map<string, Element>} byKey @param {ChildNode[]} loose
 * @returns {ChildNode | null}
 */
function match(node, byKey, loose) {
  if (typeof node === 'string') return take(loose, (child) => child.nodeType === Node.TEXT_NODE);
  if (node.key === null) return take(loose, (child) => child instanceof Element && child.localName === node.tag);
  const found = byKey.get(node.key);
  byKey.delete(node.key);
  return found && found.localName === node.tag ? found : null;
}

/** @param {ChildNode[]} from @param {(child: ChildNode) => boolean} fits */
function take(from, fits) {
  const index = from.findIndex(fits);
  return index < 0 ? null : /** @type {ChildNode} */ (from.splice(index, 1)[0]);
}

/** @param {Child} node @param {Element} parent @returns {ChildNode} */
function make(node, parent) {
  if (typeof node === 'string') return document.createTextNode(node);
  const svg = node.tag === 'svg' || parent.namespaceURI === SVG;
  const element = svg ? document.createElementNS(SVG, node.tag) : document.createElement(node.tag);
  drawn.set(element, { key: node.key, props: {}, on: {} });
  if (node.props.mount) queueMicrotask(() => node.props.mount(element));
  return element;
}

/** @param {Element} element @param {Node_} node */
function update(element, node) {
  const before = drawn.get(element) ?? { key: node.key, props: {}, on: {} };
  for (const name of Object.keys(before.props)) {
    if (!SPECIAL.has(name) && !(name in node.props)) element.removeAttribute(name);
  }
  for (const [name, value] of Object.entries(node.props)) {
    if (!SPECIAL.has(name) && before.props[name] !== value) attribute(element, name, value);
  }
  listeners(element, before.on, node.props['on'] ?? {});
  if (element instanceof HTMLElement || element instanceof SVGElement) {
    for (const [name, value] of Object.entries(node.props['vars'] ?? {})) element.style.setProperty(name, String(value));
  }
  children(element, node.children);
  const value = node.props['value'];
  if (value !== undefined && (element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement)) {
    if (element.value !== value) element.value = value;
  }
  drawn.set(element, { key: node.key, props: node.props, on: before.on });
}

/** @param {Element} element @param {string} name @param {unknown} value */
function attribute(element, name, value) {
  if (value === false || value === null || value === undefined) element.removeAttribute(name);
  else element.setAttribute(name, value === true ? '' : String(value));
}

/**
 * One listener a kind is put on the element for good; what it calls changes with every drawing.
 * @param {Element} element
 * @param {Record<string, (event: any) => void>} held
 * @param {Record<string, (event: any) => void>} wanted
 */
function listeners(element, held, wanted) {
  for (const kind of Object.keys(held)) if (!(kind in wanted)) held[kind] = () => {};
  for (const [kind, call] of Object.entries(wanted)) {
    if (!(kind in held)) element.addEventListener(kind, (event) => held[kind]?.(event));
    held[kind] = call;
  }
}
