// The border types of the core, as they arrive in JSON. Checked against the core by `web/src/fixtures.rs`.

export type Tone = 'plain' | 'quiet' | 'good' | 'attention' | 'danger' | 'primary';

/** What a person can do at a screen. The page sends back what a screen carries and never reads it, but for the drafts. */
export type Action = { do: string; [field: string]: unknown };

export type Button = { label: string; tone: Tone; press: Action; hold: boolean };
export type Live = { label: string; value: string; tone: Tone };
export type Notice = { tone: Tone; title: string; lines: string[]; buttons: Button[] };
export type Progress = { done: number; total: number; text: string };
export type PhotoView = { digest: string; caption: string; read: string[]; flags: string[] };
export type StepState = 'open' | 'gated' | 'running' | 'done' | 'skipped';
export type DwellState = 'waiting' | 'running' | 'ready' | 'over' | 'ended';

export type TextBlock = { block: 'text'; text: string; level: number; tone: Tone };
export type CautionBlock = { block: 'caution'; sign: string; title: string; text: string };
export type StepBlock = {
  block: 'step'; id: string; title: string; why: string; state: StepState; state_text: string; blocks: Block[];
};
export type CheckBlock = { block: 'check'; label: string; done: boolean; press: Action };
export type ChoiceBlock = {
  block: 'choice'; field: string; label: string; options: { value: string; label: string }[];
  chosen: string | null; problem: string | null;
};
export type NumberBlock = {
  block: 'number'; field: string; label: string; unit: string; text: string; hint: string;
  before: string | null; problem: string | null; question: Question | null;
  taken: string | null; could_not: Button | null;
};
/** What was typed is asked back, or what was read from a photograph is offered. */
export type Question = { text: string; confirm: Button };
export type TextEntryBlock = {
  block: 'text-entry'; field: string; label: string; text: string; lines: number; problem: string | null;
  question: Question | null;
};
/** Something to draw by hand. `text`, and what `Draft` sends, is JSON: `{"width", "height", "strokes": [[[x, y], …], …]}`. */
export type InkBlock = {
  block: 'ink'; field: string; label: string; hint: string; width: number; height: number; text: string;
  taken: string | null; problem: string | null; press: Button; others: Button[];
};
/** Points lie in a box four wide and three high, 0…1, upwards. */
export type Drawing = { text: string; lines: { points: { x: number; y: number }[]; wanted: boolean }[] };
export type ShotBlock = {
  block: 'shot'; slot: string; title: string; show: string; drawing: Drawing | null; photos: PhotoView[];
  before: PhotoView | null;
  press: Button; skip: Button | null;
};
export type DwellBlock = {
  block: 'dwell'; title: string; state: DwellState; state_text: string; least_at_utc_ms: number; most_at_utc_ms: number;
  least_clock: string; most_clock: string; least_ms: number; then: string;
};
export type MixBlock = {
  block: 'mix'; title: string; rows: { label: string; amount: string }[]; order: string[]; warning: string | null;
};
export type TableBlock = { block: 'table'; caption: string; columns: string[]; rows: string[][] };
export type ChartBlock = {
  block: 'chart'; caption: string; unit: string;
  bars: { label: string; value: number; doubt: number; text: string }[];
};
export type Tick = { at: number; text: string };
export type LineStyle = 'plain' | 'strong' | 'dashed';
export type PlotLine = { label: string; style: LineStyle; points: { x: number; y: number }[] };
export type Plot = {
  caption: string; text: string; x_title: string; y_title: string; x_ticks: Tick[]; y_ticks: Tick[]; lines: PlotLine[];
};
export type PlotBlock = { block: 'plot'; plot: Plot };
export type LinkBlock = { block: 'link'; label: string; to: string };
export type ButtonBlock = { block: 'button'; button: Button };

export type Block =
  | TextBlock | CautionBlock | StepBlock | CheckBlock | ChoiceBlock | NumberBlock | TextEntryBlock | InkBlock | ShotBlock
  | DwellBlock | MixBlock | TableBlock | ChartBlock | PlotBlock | LinkBlock | ButtonBlock;

export type Screen = {
  place: string; language: string; title: string; subtitle: string; unit: string | null; progress: Progress | null;
  strip: Live[]; notices: Notice[]; blocks: Block[]; foot: Button[]; menu: Button[]; outbox: Live;
};

export type Request =
  | { ask: 'take-photo'; unit: string; slot: string; title: string; show: string }
  | { ask: 'locate' }
  | { ask: 'wake-at'; utc_ms: number; text: string }
  | { ask: 'sign-bytes'; bytes_base64: string }
  | { ask: 'read-packs' };
export type Effect = { id: string; request: Request };
export type PlaceFix = { latitude_deg: number; longitude_deg: number; accuracy_m: number; age_ms: number };
export type Outcome =
  | { outcome: 'photo'; place: PlaceFix | null }
  | { outcome: 'place'; place: PlaceFix }
  | { outcome: 'woken' }
  | { outcome: 'cancelled' }
  | { outcome: 'failed'; why: string };

export type Turn = { screen: Screen; effects: Effect[] };

/** An error in words: RFC 9457. */
export type Problem = { type: string; title: string; status: number; detail: string };

/**
 * The way to the core. One implementation talks to a local process; another may hold the core itself.
 * Every promise is kept, or broken with a `DoorFault`.
 */
export interface Door {
  /** The time by which the core goes, milliseconds since 1970 UTC. */
  nowMs(): number;
  /** Leaps over a waiting time; only in a rehearsal. */
  leap: ((ms: number) => Promise<Turn>) | null;
  open(): Promise<Turn>;
  act(actionId: string, action: Action): Promise<Turn>;
  done(effectId: string, outcome: Outcome): Promise<Turn>;
  screen(): Promise<Turn>;
  /** The device's charge, per cent; null while it charges. */
  charged(percent: number | null): Promise<Turn>;
  /** Whether the network is paid by what goes over it. */
  carried(metered: boolean): Promise<Turn>;
  words(): Promise<Record<string, string>>;
  /** Hands over a photograph's original bytes, before `done`. */
  incoming(effectId: string, bytes: Blob): Promise<void>;
  /** The small picture of a photograph. */
  preview(digest: string): Promise<Blob>;
}
