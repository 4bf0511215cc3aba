/** What the papers hold, as `print` takes it. */
export type {
  Cell,
  Column,
  DocumentPage,
  FigurePage,
  Label,
  LabelsPage,
  LabelStock,
  PaperSet,
  Row as TableRow,
  TablePage,
  TextBlock,
  TextPage,
  TiledPage,
} from '../print/set.js';
