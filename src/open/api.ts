import type { PhaseOfPapers } from '../papers/ofPhase.js';
import type { Text } from '../disk/textFile.js';

/** A job file as it was on disk, and the tables that lie beside it, or why one cannot be read. */
export interface JobOnDisk {
  readonly name: string;
  readonly text: string;
  /** A fingerprint of the text, by which a later change is noticed. */
  readonly version: string;
  readonly beside: Readonly<Record<string, Text>>;
}

export interface JobList {
  /** The job to begin with. */
  readonly opened: string;
  /** All job files of the folder. */
  readonly jobs: readonly string[];
}

/** A save that went well, or the file as somebody else has changed it meanwhile. */
export type Saved =
  { readonly saved: true; readonly version: string } | { readonly saved: false; readonly theirs?: JobOnDisk };

/** The papers a job has by kind, the phases of its work, and the sheets they can go on. */
export interface PaperNames {
  readonly kinds: readonly KindOfPaper[];
  readonly phases: readonly PhaseOfPapers[];
  readonly papers: readonly string[];
}

/** A kind of paper: what it is called, its papers by name, where it usually goes, and what it takes. */
export interface KindOfPaper {
  readonly kind: string;
  readonly names: readonly string[];
  readonly goes: 'to print' | 'to look at' | 'on request';
  readonly pages: number;
  /** What is taped where its pages join, in words; nothing where none do. */
  readonly tape?: string;
}

export type AnswersOf = JobOnDisk | JobList | Saved | PaperNames;

/** What is heard while papers are made. */
export type PaperNews =
  | { readonly kind: 'laid'; readonly pages: number }
  | { readonly kind: 'page'; readonly page: number; readonly title: string; readonly svg: string }
  | { readonly kind: 'file'; readonly name: string; readonly pages: number; readonly base64: string }
  | { readonly kind: 'failed'; readonly why: string };
