import { inflateSync } from 'node:zlib'
import jsQR from 'jsqr'
import { extractText, getDocumentProxy } from 'unpdf'

/** A rectangle that one path fills, in points from the page's lower left corner. */
export interface Rectangle {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** The text of each page, read by a PDF library that has nothing to do with the one that wrote it. */
export async function pdfText(bytes: Uint8Array): Promise<string[]> {
  const { text } = await extractText(await getDocumentProxy(bytes.slice()))
  return text
}

/** The rectangles of each filled path of the file, path by path, with all transformations worked out. */
export function filledPaths(bytes: Uint8Array): Rectangle[][] {
  return contentStreams(bytes).flatMap(readFilledPaths)
}

/** Reads the QR codes that are drawn as one path of many rectangles each, as a camera would: painted on white, with a margin. */
export function readQrCodes(bytes: Uint8Array): (string | undefined)[] {
  return filledPaths(bytes)
    .filter((path) => path.length > 100)
    .map(readQrCode)
}

function contentStreams(bytes: Uint8Array): string[] {
  const file = Buffer.from(bytes)
  const streams: string[] = []
  for (let at = file.indexOf('stream\n'); at >= 0; at = file.indexOf('stream\n', at + 1)) {
    const end = file.indexOf('endstream', at)
    try {
      const content = inflateSync(file.subarray(at + 7, end)).toString('latin1')
      if (/ (re|Tf)\s/.test(content)) streams.push(content)
    } catch {
      // Not a compressed stream: fonts and character maps may follow other rules, and the drawing is not in them.
    }
  }
  return streams
}

type Matrix = readonly [number, number, number, number, number, number]

const multiply = ([a, b, c, d, e, f]: Matrix, [A, B, C, D, E, F]: Matrix): Matrix => [
  a * A + b * C,
  a * B + b * D,
  c * A + d * C,
  c * B + d * D,
  e * A + f * C + E,
  e * B + f * D + F,
]

function readFilledPaths(content: string): Rectangle[][] {
  const paths: Rectangle[][] = []
  const saved: Matrix[] = []
  let matrix: Matrix = [1, 0, 0, 1, 0, 0]
  let path: Rectangle[] = []
  let numbers: number[] = []
  for (const token of content.split(/\s+/)) {
    if (/^[-+.\d]+$/.test(token)) {
      numbers.push(Number(token))
      continue
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers
    if (token === 'q') saved.push(matrix)
    else if (token === 'Q') matrix = saved.pop() ?? matrix
    else if (token === 'cm') matrix = multiply([a, b, c, d, e, f], matrix)
    else if (token === 're') path.push(transform({ x: a, y: b, width: c, height: d }, matrix))
    else if (['f', 'f*', 'S', 'n', 'B'].includes(token)) {
      if (token.startsWith('f')) paths.push(path)
      path = []
    }
    numbers = []
  }
  return paths
}

function transform({ x, y, width, height }: Rectangle, matrix: Matrix): Rectangle {
  const [, , , , x0, y0] = multiply([1, 0, 0, 1, x, y], matrix)
  const [, , , , x1, y1] = multiply([1, 0, 0, 1, x + width, y + height], matrix)
  return { x: Math.min(x0, x1), y: Math.min(y0, y1), width: Math.abs(x1 - x0), height: Math.abs(y1 - y0) }
}

function readQrCode(path: readonly Rectangle[]): string | undefined {
  const [left, bottom] = [Math.min(...path.map(({ x }) => x)), Math.min(...path.map(({ y }) => y))]
  const top = Math.max(...path.map(({ y, height }) => y + height))
  const scale = 400 / (top - bottom)
  const [margin, side] = [60, 520]
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255)
  for (const { x, y, width, height } of path) {
    const [fromX, toX] = [margin + (x - left) * scale, margin + (x + width - left) * scale]
    const [fromY, toY] = [margin + (top - y - height) * scale, margin + (top - y) * scale]
    for (let row = Math.round(fromY); row < Math.round(toY); row += 1) {
      for (let column = Math.round(fromX); column < Math.round(toX); column += 1)
        pixels.fill(0, (row * side + column) * 4, (row * side + column) * 4 + 3)
    }
  }
  return jsQR(pixels, side, side)?.data
}
