import 'server-only'
import bwip from 'bwip-js/node'

/** Modules of light around a QR code on all four sides. Source: ISO/IEC 18004. */
export const QUIET_MODULES = 4

/**
 * The modules of a QR code, rows from the top, true for dark; error correction M (about 15 %).
 *
 * @param text - what a phone reads from it
 */
export function qrModules(text: string): boolean[][] {
  const [code] = bwip.raw('qrcode', text, 'eclevel=M')
  if (!code || !('pixs' in code)) throw new Error('No QR code was made')
  return Array.from({ length: code.pixy }, (_, row) => code.pixs.slice(row * code.pixx, (row + 1) * code.pixx).map((pixel) => pixel === 1))
}
