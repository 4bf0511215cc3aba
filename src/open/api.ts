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

/** The papers a job has, and the sheets they can go on. */
export interface PaperNames {
  readonly names: readonly string[];
  readonly papers: readonly string[];
}

export type AnswersOf = JobOnDisk | JobList | Saved | PaperNames;

/** What is heard while papers are made. */
export type PaperNews =
  | { readonly kind: 'laid'; readonly pages: number }
  | { readonly kind: 'page'; readonly page: number; readonly title: string; readonly svg: string }
  | { readonly kind: 'file'; readonly pages: number; readonly base64: string }
  | { readonly kind: 'failed'; readonly why: string };
