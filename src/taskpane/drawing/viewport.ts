/** Zoom and pan of the drawing. It moves a group by an attribute, so that print, whose style sheet takes that back, shows the whole. */

export interface Viewport {
  readonly zoom: (factor: number) => void;
  readonly fit: () => void;
  /** Puts the view over another drawing, which begins whole. */
  readonly attach: (content: SVGSVGElement, sheet: SVGGElement) => void;
}

interface View {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

const WHOLE: View = { scale: 1, x: 0, y: 0 };
const MOST = 6;
const STEP = 1.4;
/** Of the visible width or height for one press of an arrow key. */
const KEY_SHARE = 0.15;
/** Pixels that a pointer may tremble in a click. */
const TREMBLE = 4;

/** @param frame holds the drawing, has the focus and takes the keys */
export function viewportOf(frame: HTMLElement): Viewport {
  const state: { view: View; content: SVGSVGElement | undefined; sheet: SVGGElement | undefined } = { view: WHOLE, content: undefined, sheet: undefined };
  const show = (view: View): void => {
    state.view = inside(view, sizeOf(state.content));
    const { scale, x, y } = state.view;
    state.sheet?.setAttribute("transform", scale === 1 ? "" : `translate(${x.toFixed(1)} ${y.toFixed(1)}) scale(${scale.toFixed(3)})`);
    frame.classList.toggle("is-zoomed", scale > 1);
  };
  const zoomAbout = (factor: number, at: { readonly x: number; readonly y: number }): void => {
    const scale = Math.min(MOST, Math.max(1, state.view.scale * factor));
    const ratio = scale / state.view.scale;
    show({ scale, x: at.x - (at.x - state.view.x) * ratio, y: at.y - (at.y - state.view.y) * ratio });
  };
  const zoom = (factor: number): void => { zoomAbout(factor, visibleMiddle(state.content, frame)); };
  const pan = (x: number, y: number): void => { show({ ...state.view, x: state.view.x + x, y: state.view.y + y }); };
  const fit = (): void => { show(WHOLE); };
  listenForKeys(frame, { zoom, fit, pan: (x, y) => { pan(x * sizeOf(state.content).width * KEY_SHARE, y * sizeOf(state.content).width * KEY_SHARE); }, isWhole: () => state.view.scale === 1 });
  listenForWheel(frame, (event) => { zoomAbout(event.deltaY < 0 ? STEP : 1 / STEP, inUnits(state.content, event)); });
  listenForDrag(frame, { isWhole: () => state.view.scale === 1, pan: (x, y) => { const ratio = unitsInPixel(state.content); pan(x * ratio, y * ratio); } });
  return {
    zoom, fit,
    attach: (content, sheet) => {
      [state.content, state.sheet] = [content, sheet];
      show(WHOLE);
    },
  };
}

export const zoomStep = STEP;

const sizeOf = (content: SVGSVGElement | undefined): { readonly width: number; readonly height: number } => content?.viewBox.baseVal ?? { width: 1, height: 1 };

/** The sheet always covers its frame. */
const inside = ({ scale, x, y }: View, { width, height }: { readonly width: number; readonly height: number }): View => ({ scale, x: Math.min(0, Math.max(x, width * (1 - scale))), y: Math.min(0, Math.max(y, height * (1 - scale))) });

const unitsInPixel = (content: SVGSVGElement | undefined): number => sizeOf(content).width / (content?.getBoundingClientRect().width || 1);

function inUnits(content: SVGSVGElement | undefined, { clientX, clientY }: { readonly clientX: number; readonly clientY: number }) {
  const box = content?.getBoundingClientRect();
  const ratio = unitsInPixel(content);
  return { x: (clientX - (box?.left ?? 0)) * ratio, y: (clientY - (box?.top ?? 0)) * ratio };
}

/** A drawing longer than its window is zoomed about the part in sight. */
function visibleMiddle(content: SVGSVGElement | undefined, frame: HTMLElement) {
  const box = (content ?? frame).getBoundingClientRect();
  const [top, bottom] = [Math.max(box.top, 0), Math.min(box.bottom, innerHeight)];
  return inUnits(content, { clientX: box.left + box.width / 2, clientY: bottom > top ? (top + bottom) / 2 : box.top + box.height / 2 });
}

interface KeyActions {
  readonly zoom: (factor: number) => void;
  readonly fit: () => void;
  readonly pan: (x: number, y: number) => void;
  readonly isWhole: () => boolean;
}

/** While the whole is in sight the arrow keys scroll the page as ever. */
function listenForKeys(frame: HTMLElement, { zoom, fit, pan, isWhole }: KeyActions): void {
  const keys: Readonly<Record<string, () => void>> = {
    "+": () => { zoom(STEP); }, "=": () => { zoom(STEP); }, "-": () => { zoom(1 / STEP); }, "0": fit,
    ArrowLeft: () => { pan(1, 0); }, ArrowRight: () => { pan(-1, 0); }, ArrowUp: () => { pan(0, 1); }, ArrowDown: () => { pan(0, -1); },
  };
  frame.addEventListener("keydown", (event) => {
    const act = keys[event.key];
    if (!act || event.ctrlKey || event.metaKey || event.altKey || (event.key.startsWith("Arrow") && isWhole())) return;
    event.preventDefault();
    act();
  });
}

/** The wheel scrolls the page; with Ctrl, or a pinch, it zooms. */
function listenForWheel(frame: HTMLElement, zoom: (event: WheelEvent) => void): void {
  frame.addEventListener("wheel", (event) => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    zoom(event);
  }, { passive: false });
}

function listenForDrag(frame: HTMLElement, { isWhole, pan }: Pick<KeyActions, "isWhole" | "pan">): void {
  let last: { readonly x: number; readonly y: number } | undefined;
  let moved = 0;
  frame.addEventListener("pointerdown", ({ clientX, clientY, button }) => {
    moved = 0;
    last = button === 0 && !isWhole() ? { x: clientX, y: clientY } : undefined;
  });
  frame.addEventListener("pointermove", ({ clientX, clientY, pointerId }) => {
    if (!last) return;
    const [x, y] = [clientX - last.x, clientY - last.y];
    moved += Math.abs(x) + Math.abs(y);
    if (moved < TREMBLE) return;
    // Taken once it is a drag and no sooner: the click of a captured pointer falls on the frame, not on the line under it.
    frame.setPointerCapture(pointerId);
    last = { x: clientX, y: clientY };
    pan(x, y);
  });
  for (const end of ["pointerup", "pointercancel"]) frame.addEventListener(end, () => { last = undefined; });
}
