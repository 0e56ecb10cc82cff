/** A drawing from the sprite at the top of the document. Silent: the word stands beside it. */
export function Glyph({ name, box = '0 0 48 48', width, height, className }: GlyphProps) {
  return (
    <svg className={className ? `sym ${className}` : 'sym'} viewBox={box} width={width} height={height} aria-hidden="true">
      <use href={`#sym-${name}`} />
    </svg>
  )
}

type GlyphProps = { name: string; box?: string; width?: number; height?: number; className?: string }
