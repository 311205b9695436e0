import { STATE_SIZE } from './belief.ts';

/** A square matrix of the state's size, row by row. */
export type Matrix = readonly number[];

/** One element; every index in use is in range, the 0 only satisfies the compiler. */
export function element(matrix: Matrix, row: number, column: number): number {
  return matrix[row * STATE_SIZE + column] ?? 0;
}

/** A matrix with these numbers on the diagonal and zeros elsewhere. */
export function diagonal(values: readonly number[]): Matrix {
  const result: number[] = [];
  for (let row = 0; row < STATE_SIZE; row += 1) {
    for (let column = 0; column < STATE_SIZE; column += 1) {
      result.push(row === column ? (values[row] ?? 0) : 0);
    }
  }
  return result;
}

/** Matrix times column vector. */
export function timesVector(matrix: Matrix, vector: readonly number[]): number[] {
  const result: number[] = [];
  for (let row = 0; row < STATE_SIZE; row += 1) {
    let sum = 0;
    for (let column = 0; column < STATE_SIZE; column += 1) {
      sum += element(matrix, row, column) * (vector[column] ?? 0);
    }
    result.push(sum);
  }
  return result;
}

/** The scalar product of two vectors. */
export function dot(one: readonly number[], other: readonly number[]): number {
  let sum = 0;
  for (let index = 0; index < one.length; index += 1) {
    sum += (one[index] ?? 0) * (other[index] ?? 0);
  }
  return sum;
}

/** `matrix` less `factor` times the outer product of `vector` with itself; stays symmetric. */
export function lessOuter(matrix: Matrix, vector: readonly number[], factor: number): Matrix {
  const result: number[] = [];
  for (let row = 0; row < STATE_SIZE; row += 1) {
    const scaled = factor * (vector[row] ?? 0);
    for (let column = 0; column < STATE_SIZE; column += 1) {
      result.push(element(matrix, row, column) - scaled * (vector[column] ?? 0));
    }
  }
  return result;
}

/** A P A^T, symmetric to the last bit when P is. */
export function transform(a: Matrix, p: Matrix): number[] {
  const half: number[] = [];
  for (let row = 0; row < STATE_SIZE; row += 1) {
    for (let column = 0; column < STATE_SIZE; column += 1) {
      let sum = 0;
      for (let k = 0; k < STATE_SIZE; k += 1) sum += element(a, row, k) * element(p, k, column);
      half.push(sum);
    }
  }
  const result = new Array<number>(STATE_SIZE * STATE_SIZE).fill(0);
  for (let row = 0; row < STATE_SIZE; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let sum = 0;
      for (let k = 0; k < STATE_SIZE; k += 1) sum += element(half, row, k) * element(a, column, k);
      result[row * STATE_SIZE + column] = sum;
      result[column * STATE_SIZE + row] = sum;
    }
  }
  return result;
}

/**
 * The same, sooner, for an A whose rows from the third on have nothing but their
 * diagonal (as a motion has: it mixes only range and bearing).
 */
export function transformByMotion(a: Matrix, p: Matrix): number[] {
  const result = new Array<number>(STATE_SIZE * STATE_SIZE).fill(0);
  // A P, of which only the first two rows are more than a scaling.
  const half: number[] = [];
  for (let row = 0; row < MIXED; row += 1) {
    for (let column = 0; column < STATE_SIZE; column += 1) {
      let sum = 0;
      for (let k = 0; k < STATE_SIZE; k += 1) sum += element(a, row, k) * element(p, k, column);
      half.push(sum);
    }
  }
  for (let row = 0; row < STATE_SIZE; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let sum = 0;
      if (row < MIXED) {
        for (let k = 0; k < STATE_SIZE; k += 1)
          sum += element(half, row, k) * element(a, column, k);
      } else {
        const along = column < MIXED ? element(half, column, row) : scaled(a, p, column, row);
        sum = along * element(a, row, row);
      }
      result[row * STATE_SIZE + column] = sum;
      result[column * STATE_SIZE + row] = sum;
    }
  }
  return result;
}

/** Rows of a motion that mix: range and bearing. */
const MIXED = 2;

/** Element of A P in a row that only scales. */
function scaled(a: Matrix, p: Matrix, row: number, column: number): number {
  return element(a, row, row) * element(p, row, column);
}

/**
 * Lower triangle L with L L^T = P (Cholesky). A pivot that rounding has made negative counts as 0: that
 * direction then has no spread.
 */
export function lowerRoot(p: Matrix): number[] {
  const root = new Array<number>(STATE_SIZE * STATE_SIZE).fill(0);
  for (let column = 0; column < STATE_SIZE; column += 1) {
    for (let row = column; row < STATE_SIZE; row += 1) {
      let sum = element(p, row, column);
      for (let k = 0; k < column; k += 1) sum -= element(root, row, k) * element(root, column, k);
      if (row === column) root[row * STATE_SIZE + column] = Math.sqrt(Math.max(0, sum));
      else {
        const pivot = element(root, column, column);
        root[row * STATE_SIZE + column] = pivot > 0 ? sum / pivot : 0;
      }
    }
  }
  return root;
}
