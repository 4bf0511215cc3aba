import type PDFDocument from 'pdfkit';

/** A PDF under work, as pdfkit has it. */
export type Pdf = InstanceType<typeof PDFDocument>;
