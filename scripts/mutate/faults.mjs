// Every small fault that can be put into a source file, found in its syntax tree.
import ts from 'typescript';

const { SyntaxKind } = ts;

/** Each operator and what it is turned into. */
const TURNED = {
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '<': '<=',
  '<=': '<',
  '>': '>=',
  '>=': '>',
  '&&': '||',
  '||': '&&',
  '===': '!==',
  '!==': '===',
  '+=': '-=',
  '-=': '+=',
};
const EXCHANGED = { min: 'max', max: 'min', floor: 'ceil', ceil: 'floor', cos: 'sin', sin: 'cos' };
/** A smaller constant stands for rounding alone: no board tells it from one a little off. */
const ROUNDING = 1e-3;
/** How much of a constant that is not whole is added. */
const LITTLE = 0.1;

/**
 * The faults of a file, in its order; `start` and `end` count characters.
 *
 * @returns {{ line: number, start: number, end: number, from: string, to: string }[]}
 */
export function faultsIn(name, text) {
  const file = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true);
  const faults = [];
  const add = (node, to) => {
    const start = node.getStart(file);
    const line = file.getLineAndCharacterOfPosition(start).line + 1;
    faults.push({ line, start, end: node.end, from: text.slice(start, node.end), to });
  };
  const negate = (condition) => add(condition, `!(${condition.getText(file)})`);
  const visit = (node) => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isInterfaceDeclaration(node)) return;
    if (ts.isBinaryExpression(node)) {
      const to = TURNED[node.operatorToken.getText(file)];
      if (to && !(to === '-' && isText(node.left, node.right))) add(node.operatorToken, to);
    }
    if (ts.isPropertyAccessExpression(node) && node.expression.getText(file) === 'Math' && EXCHANGED[node.name.text])
      add(node.name, EXCHANGED[node.name.text]);
    if (ts.isNumericLiteral(node)) offByALittle(node, add);
    if (ts.isPrefixUnaryExpression(node) && (node.operator === SyntaxKind.MinusToken || isNot(node)))
      add(node, `(${node.operand.getText(file)})`);
    if (ts.isIfStatement(node) && !isNot(node.expression)) negate(node.expression);
    if (ts.isConditionalExpression(node) && !isNot(node.condition)) negate(node.condition);
    if (isRemovable(node)) add(node, ';');
    ts.forEachChild(node, visit);
  };
  visit(file);
  return faults.sort((a, b) => a.start - b.start);
}

function offByALittle(node, add) {
  const value = Number(node.text);
  if (!(value === 0 || value >= ROUNDING) || !Number.isFinite(value)) return;
  if (Number.isInteger(value)) {
    add(node, String(value + 1));
    if (value > 0) add(node, String(value - 1));
  } else add(node, String(value * (1 + LITTLE)));
}

function isNot(node) {
  return ts.isPrefixUnaryExpression(node) && node.operator === SyntaxKind.ExclamationToken;
}

/** What is joined and not added. */
function isText(...sides) {
  return sides.some(
    (side) =>
      ts.isStringLiteralLike(side) ||
      ts.isTemplateExpression(side) ||
      (ts.isBinaryExpression(side) && isText(side.left, side.right)),
  );
}

/** A step that may be left out: something called, set or returned, a way out of a loop. */
function isRemovable(node) {
  if (ts.isReturnStatement(node) || ts.isContinueStatement(node) || ts.isBreakStatement(node)) return true;
  return ts.isExpressionStatement(node) && !ts.isStringLiteral(node.expression);
}
