import styles from '#components/menu/label/tiles.module.css'
import { VesselSign } from '#components/menu/label/vessel-sign.tsx'
import { type LabelFormWords, useLabelFormWords } from '#components/menu/label/words.tsx'
import type { Tile } from '#lib/editor/label-form/tiles.ts'

interface AllergenTilesProps {
  readonly tiles: readonly Tile[]
  /** Codes that a problem is about. */
  readonly wrong: readonly string[]
  readonly onTap: (code: string) => void
}

/** What a tile says: its answer, what the words propose for it, or that there is no answer yet. */
const saidOn = (words: LabelFormWords, tile: Tile): { said: string; why: string | null } => {
  const { answer, proposes, contained } = tile
  if (answer !== null) {
    const kinds = answer === 'contains' && contained.length > 0
    return { said: words.word[answer], why: kinds ? words.kindsIn(contained) : null }
  }
  if (proposes === null) return { said: words.noAnswer, why: null }
  if (proposes === 'ask') return { said: words.noAnswer, why: words.ask(tile.words) }
  return { said: words.proposed[proposes], why: words.because(tile.words) }
}

const stateOf = ({ answer, proposes }: Tile): string =>
  answer ?? (proposes === null ? 'open' : proposes === 'ask' ? 'ask' : 'proposed')

/** One tile an allergen; a tap prints the word that was taken on it. */
export function AllergenTiles({ tiles, wrong, onTap }: AllergenTilesProps) {
  const words = useLabelFormWords()
  return (
    <ul className={styles.tiles}>
      {tiles.map((tile) => {
        const { said, why } = saidOn(words, tile)
        return (
          <li key={tile.code}>
            <button
              type="button"
              data-state={stateOf(tile)}
              data-wrong={wrong.includes(tile.code) || undefined}
              onClick={() => onTap(tile.code)}
            >
              {tile.answer !== null && <VesselSign word={tile.answer} />}
              <b>{words.tile(tile.code)}</b>
              <span>{said}</span>
              {why !== null && <small>{why}</small>}
            </button>
          </li>
        )
      })}
    </ul>
  )
}
