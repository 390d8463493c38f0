import styles from '#components/menu/label/tiles.module.css'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import { answerOf, type LabelForm } from '#lib/editor/label-form/form.ts'
import type { Tile } from '#lib/editor/label-form/tiles.ts'

interface KindTilesProps {
  readonly form: LabelForm
  readonly tile: Tile
  readonly onTap: (kind: string) => void
}

/** Kinds of a group that is contained: a guest may keep away from one of them alone. */
export function KindTiles({ form, tile, onTap }: KindTilesProps) {
  const words = useLabelFormWords()
  return (
    <fieldset className={styles.kinds}>
      <legend>{words.kindsOf(tile.code)}</legend>
      {tile.kinds.map((kind) => {
        const answer = answerOf(form, kind)
        return (
          <button
            key={kind}
            type="button"
            data-state={answer ?? 'open'}
            onClick={() => onTap(kind)}
          >
            <b>{words.tile(kind)}</b>
            <span>{answer === null ? words.noAnswer : words.word[answer]}</span>
          </button>
        )
      })}
    </fieldset>
  )
}
