/** Factors a square matrix, held by rows, in its place: A = P·L·U. False where it is singular. */
export function factor(a: Float64Array, n: number, pivots: Int32Array): boolean {
  for (let k = 0; k < n; k++) {
    let top = k
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i * n + k] as number) > Math.abs(a[top * n + k] as number)) top = i
    pivots[k] = top
    if (top !== k) swapRows(a, n, k, top)
    const pivot = a[k * n + k] as number
    if (!(Math.abs(pivot) > 0)) return false
    for (let i = k + 1; i < n; i++) {
      const share = (a[i * n + k] as number) / pivot
      a[i * n + k] = share
      if (share !== 0) for (let j = k + 1; j < n; j++) a[i * n + j] = (a[i * n + j] as number) - share * (a[k * n + j] as number)
    }
  }
  return true
}

/** Solves with what {@link factor} left; the answer takes the place of `b`. */
export function solveFactored(a: Float64Array, n: number, pivots: Int32Array, b: Float64Array): void {
  for (let k = 0; k < n; k++) {
    swap(b, k, pivots[k] as number)
    const known = b[k] as number
    if (known !== 0) for (let i = k + 1; i < n; i++) b[i] = (b[i] as number) - (a[i * n + k] as number) * known
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i] as number
    for (let j = i + 1; j < n; j++) sum -= (a[i * n + j] as number) * (b[j] as number)
    b[i] = sum / (a[i * n + i] as number)
  }
}

/** {@link factor} of a complex matrix, its real and imaginary part apart. */
export function factorComplex(re: Float64Array, im: Float64Array, n: number, pivots: Int32Array): boolean {
  const size = (at: number) => Math.abs(re[at] as number) + Math.abs(im[at] as number)
  for (let k = 0; k < n; k++) {
    let top = k
    for (let i = k + 1; i < n; i++) if (size(i * n + k) > size(top * n + k)) top = i
    pivots[k] = top
    if (top !== k) {
      swapRows(re, n, k, top)
      swapRows(im, n, k, top)
    }
    const pr = re[k * n + k] as number
    const pi = im[k * n + k] as number
    const square = pr * pr + pi * pi
    if (!(square > 0)) return false
    for (let i = k + 1; i < n; i++) {
      const at = i * n + k
      const xr = re[at] as number
      const xi = im[at] as number
      const sr = (xr * pr + xi * pi) / square
      const si = (xi * pr - xr * pi) / square
      re[at] = sr
      im[at] = si
      if (sr === 0 && si === 0) continue
      for (let j = k + 1; j < n; j++) {
        const ur = re[k * n + j] as number
        const ui = im[k * n + j] as number
        re[i * n + j] = (re[i * n + j] as number) - (sr * ur - si * ui)
        im[i * n + j] = (im[i * n + j] as number) - (sr * ui + si * ur)
      }
    }
  }
  return true
}

/** Solves with what {@link factorComplex} left; the answer takes the place of `br` and `bi`. */
export function solveComplex(re: Float64Array, im: Float64Array, n: number, pivots: Int32Array, br: Float64Array, bi: Float64Array): void {
  for (let k = 0; k < n; k++) {
    swap(br, k, pivots[k] as number)
    swap(bi, k, pivots[k] as number)
    const kr = br[k] as number
    const ki = bi[k] as number
    for (let i = k + 1; i < n; i++) {
      const lr = re[i * n + k] as number
      const li = im[i * n + k] as number
      br[i] = (br[i] as number) - (lr * kr - li * ki)
      bi[i] = (bi[i] as number) - (lr * ki + li * kr)
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let sr = br[i] as number
    let si = bi[i] as number
    for (let j = i + 1; j < n; j++) {
      const ur = re[i * n + j] as number
      const ui = im[i * n + j] as number
      const xr = br[j] as number
      const xi = bi[j] as number
      sr -= ur * xr - ui * xi
      si -= ur * xi + ui * xr
    }
    const pr = re[i * n + i] as number
    const pi = im[i * n + i] as number
    const square = pr * pr + pi * pi
    br[i] = (sr * pr + si * pi) / square
    bi[i] = (si * pr - sr * pi) / square
  }
}

function swap(list: Float64Array, i: number, j: number): void {
  const held = list[i] as number
  list[i] = list[j] as number
  list[j] = held
}

function swapRows(a: Float64Array, n: number, i: number, j: number): void {
  for (let c = 0; c < n; c++) swap(a, i * n + c, j * n + c)
}
