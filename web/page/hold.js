// A button that must be held, because what it does cannot be taken back.

/** @typedef {{ timer: number }} Hold */

/** How long it must be held, milliseconds. The style sheet's fill takes as long. */
const HOLD_MS = 1500;
/** How long the second press may take where holding is not possible, milliseconds. */
const ARMED_MS = 6000;

/** @type {WeakMap<Element, Hold>} */
const holds = new WeakMap();

/**
 * Listeners for a button that must be held, with a finger, the mouse, Enter or the space bar. A press that cannot be
 * held (a switch, a voice, a screen reader) asks for a second one instead.
 * @param {() => void} fire
 */
export function holdListeners(fire) {
  /** @param {Event} event */
  const begin = (event) => {
    const element = /** @type {Element} */ (event.currentTarget);
    if (holds.has(element)) return;
    element.classList.add('holding');
    const timer = setTimeout(() => {
      finish(element);
      navigator.vibrate?.(60);
      fire();
    }, HOLD_MS);
    holds.set(element, { timer });
  };
  /** @param {Event} event */
  const end = (event) => finish(/** @type {Element} */ (event.currentTarget));
  return {
    /** @param {PointerEvent} event */
    pointerdown: (event) => {
      if (event.button === 0) begin(event);
    },
    pointerup: end,
    pointerleave: end,
    pointercancel: end,
    blur: end,
    /** @param {Event} event */
    contextmenu: (event) => event.preventDefault(),
    /** @param {KeyboardEvent} event */
    keydown: (event) => {
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      if (!event.repeat) begin(event);
    },
    /** @param {KeyboardEvent} event */
    keyup: (event) => {
      if (event.key === 'Enter' || event.key === ' ') event.preventDefault();
      end(event);
    },
    /** @param {MouseEvent} event */
    click: (event) => {
      // A click that came from a pointer or a key was handled above; only one without either arrives with no detail.
      if (event.detail !== 0 || /** @type {PointerEvent} */ (event).pointerType) return;
      const element = /** @type {Element} */ (event.currentTarget);
      if (element.classList.contains('armed')) {
        element.classList.remove('armed');
        fire();
        return;
      }
      element.classList.add('armed');
      setTimeout(() => element.classList.remove('armed'), ARMED_MS);
    },
  };
}

/** @param {Element} element */
function finish(element) {
  const hold = holds.get(element);
  if (!hold) return;
  clearTimeout(hold.timer);
  holds.delete(element);
  element.classList.remove('holding');
}
