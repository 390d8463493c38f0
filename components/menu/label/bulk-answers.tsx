import styles from '#components/menu/label/reading.module.css'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import { Button } from '#components/ui/button.tsx'
import type { LabelForm } from '#lib/editor/label-form/form.ts'
import {
  openTiles,
  restOf,
  type Tile,
  toConfirm,
  withConfirmed,
  withRest,
  withRestUnsaid,
} from '#lib/editor/label-form/tiles.ts'
import type { Allergens } from '#lib/station/codes/askable.ts'
import type { Mark } from '#lib/station/label-words/read-list.ts'

interface BulkAnswersProps {
  readonly allergens: Allergens
  readonly form: LabelForm
  readonly tiles: readonly Tile[]
  readonly marks: readonly Mark[]
  readonly onChange: (form: LabelForm) => void
}

/** What answers several at once, each a claim of who reads: the marked words, the rest, and nothing. */
export function BulkAnswers({ allergens, form, tiles, marks, onChange }: BulkAnswersProps) {
  const words = useLabelFormWords()
  const marked = toConfirm(tiles).map(({ code }) => code)
  const rest = restOf(allergens, form, tiles)
  const open = openTiles(tiles).length
  const count = rest.notListed.length
  const hasRest = count + rest.notSaid.length > 0
  const lacks = !hasRest
    ? words.rest(0)
    : form.law === null
      ? words.lacksLaw
      : form.list.trim() === '' && !form.isPlain
        ? words.lacksList
        : count === 0
          ? words.rest(0)
          : null
  return (
    <div className={styles.bulk}>
      <Button
        disabled={marked.length === 0}
        sub={marked.length === 0 ? undefined : words.confirmWhy}
        onClick={() => onChange(withConfirmed(form, tiles, marks))}
      >
        {words.confirm(marked)}
      </Button>
      <Button
        lacks={lacks}
        sub={
          <>
            {form.isPlain ? words.restPlainWhy : words.restWhy}
            {rest.notSaid.length > 0 && <small>{words.restUnsaid(rest.notSaid)}</small>}
          </>
        }
        onClick={() => onChange(withRest(form, allergens, tiles, marks))}
      >
        {count === 1 ? words.restOne : words.rest(count)}
      </Button>
      <Button
        kind="quiet"
        disabled={open === 0}
        onClick={() => onChange(withRestUnsaid(form, tiles))}
      >
        {words.leftUnsaid(open)}
      </Button>
    </div>
  )
}
