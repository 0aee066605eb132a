/** Lengths are millimetres and angles degrees, but for texts, which are in the wearer's unit. */

export type Unit = "mm" | "cm" | "in";

export interface MeasurementSet {
  name: string;
  unit: Unit;
  source?: string;
  notes?: string;
  /** By name; a number is in `unit`, a text may carry its own: `"36 1/2 in"`. */
  measurements: Record<string, number | string>;
}

export type BlockName = "bodice" | "skirt" | "bodice and skirt" | "dress" | "tunic" | "shirt";

/** One alteration with its settings: `{ back_length_reduction: { amount: 25 } }`. */
export type Step = Record<string, Record<string, unknown>>;

/** A job, with the keys of a job file. */
export interface Job {
  title: string;
  size?: string;
  date?: string;
  block: BlockName | BlockName[] | { file: string; kind?: BlockName; edges?: Record<string, string> };
  body?: MeasurementSet | string | { table: string; size?: string; sizes?: Record<string, string> };
  ease?: "close" | "regular" | "loose" | Record<string, number | string>;
  length?: number | string;
  sleeve?: "none" | "short" | "long";
  cap_ease?: number | string;
  waist_darts?: boolean;
  side?: "shaped" | "straight";
  alterations?: Step[];
  observed?: { place: string; pinned?: number | string; opened?: number | string; side?: "left" | "right" }[];
  allowance?: number | string | Record<string, number | string>;
  print?: { paper?: string; margin?: number; overlap?: number; orientation?: string };
  dxf?: boolean;
}

/** Texts of files that a job names. */
export type Files = Record<string, string>;

export type Message =
  | { ask: "describe" }
  | { ask: "measure"; set: MeasurementSet; unit?: Unit; focus?: string }
  | { ask: "form"; set?: MeasurementSet; unit?: Unit; paper?: "a4" | "letter" }
  | { ask: "signs"; words?: string; unit?: Unit }
  | { ask: "draft"; job: Job; files?: Files; report?: boolean }
  | { ask: "most"; job: Job; files?: Files; step: number }
  | { ask: "fit"; job: Job; files?: Files; wearer: MeasurementSet }
  | {
      ask: "output";
      job: Job;
      files?: Files;
      what: "pages" | "sheet" | "svg" | "document" | "dxf" | "fitting" | "range" | "lay" | "batch";
      /** For a range: the text of a size table. */
      table?: string;
      /** For a lay: the width of the cloth with its unit. */
      width?: string;
      folded?: boolean;
      one_way?: boolean;
      rounds?: number;
    }
  | { ask: "read"; text: string; name?: string; files?: Files }
  | { ask: "write"; job: Job; files?: Files; wearer?: MeasurementSet | null; off?: { at: number; step: Step }[] };

export interface Problem {
  code: string;
  text: string;
  cure?: string;
  place?: string;
  key?: string;
  line?: number;
  column?: number;
}

export interface Refusal {
  status: "refused" | "wrong";
  errors: Problem[];
}

export interface OutputFile {
  name: string;
  type: string;
  /** In base64; `bytes` reads it. */
  data: string;
}

export interface Shape {
  ring: string;
  edges: { name: string; role: "seam" | "fold" | "hem" | "opening"; path: string; length: number }[];
  darts: { name: string; path: string; at: [number, number] }[];
  lines: { name: string; path: string; at: [number, number] }[];
  notches: [[number, number], [number, number]][];
  grain: [[number, number], [number, number]];
  points: { name: string; at: [number, number] }[];
  cut_line?: string;
}

export interface Drafted {
  status: "ok";
  unit: Unit;
  pieces: {
    name: string;
    cut: string;
    bounds: [number, number, number, number];
    after: Shape | null;
    before: Shape | null;
    shift: Record<string, [number, number]>;
  }[];
  seams: {
    name: string;
    a: [string, string][];
    b: [string, string][];
    a_length: number;
    b_length: number;
    ease: number;
    ease_on: "a" | "b" | null;
  }[];
  amounts: { amount: number | null; unit: "mm" | "deg" }[];
  refused?: { step: number; most?: number; before?: number; problem: Problem };
  report?: Record<string, unknown>;
}

/** What an answer holds besides its status. */
export interface Answers {
  describe: Record<string, unknown>;
  measure: { complete: boolean; rows: Record<string, unknown>[]; notes: string[]; figure: string | null };
  form: { files: OutputFile[] };
  signs: { signs: Record<string, unknown>[] };
  draft: Omit<Drafted, "status">;
  most: { unit: "mm" | "deg"; least: number; most: number };
  fit: { steps: Step[]; text: string; size?: string; report: Record<string, unknown>; made_for: MeasurementSet };
  output: { files: OutputFile[]; text: string };
  read:
    | { kind: "job"; job: Job; wearer?: MeasurementSet; off: { at: number; step: Step }[] }
    | { kind: "set"; set: MeasurementSet }
    | { kind: "table"; name: string; sizes: string[]; text: string };
  write: { files: { name: string; text: string }[] };
}

export declare class Blockwright {
  ask<M extends Message>(message: M): ({ status: "ok" } & Answers[M["ask"]]) | Refusal;
}

/** Loads the module, from beside this file unless another source is given. */
export declare function load(source?: BufferSource | Response | URL | string): Promise<Blockwright>;

export declare function bytes(file: OutputFile): Uint8Array;
