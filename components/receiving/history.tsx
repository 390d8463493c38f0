import { useState } from 'react'
import { isRefused, look } from '#components/access/ask.ts'
import styles from '#components/receiving/history.module.css'
import { useReceivingWords } from '#components/receiving/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { Note } from '#components/ui/note.tsx'
import type { Delivery } from '#lib/larder/delivery.ts'
import { foodsInOrder, type ReceivingShown } from '#lib/larder/receiving-view.ts'

function Rows({ of, timeZone }: { readonly of: readonly Delivery[]; readonly timeZone: string }) {
  const words = useReceivingWords()
  return (
    <ul className={styles.rows}>
      {of.map((one) => (
        <li key={`${one.ingredient} ${one.at}`} data-back={one.sentBack !== null || undefined}>
          {words.row(words.sayDay(one.at, timeZone), one.name, one.lot, one.useBy)}
          {one.packs !== null && ` · ${words.count(one.packs)}`}
          {one.sentBack !== null && <b> {words.rowBack(one.sentBack)}</b>}
        </li>
      ))}
    </ul>
  )
}

interface Found {
  readonly lot: string
  readonly deliveries: readonly Delivery[]
}

/** Which lots came: of each food the newest, and of a lot that is called back all there ever was. */
export function History({ shown }: { readonly shown: ReceivingShown }) {
  const words = useReceivingWords()
  const [lot, setLot] = useState('')
  const [found, setFound] = useState<Found | null>(null)
  const [isLost, setLost] = useState(false)
  const find = async (): Promise<void> => {
    const asked = lot.trim()
    const told = await look<Pick<Found, 'deliveries'>>(
      `/larder/lots?lot=${encodeURIComponent(asked)}`,
    )
    setLost(isRefused(told))
    if (!isRefused(told)) setFound({ lot: asked, deliveries: told.deliveries })
  }
  const came = foodsInOrder(shown).filter(({ deliveries }) => deliveries.length > 0)
  return (
    <section className={styles.history} aria-labelledby="came-before">
      <form
        className={styles.find}
        onSubmit={(event) => {
          event.preventDefault()
          void find()
        }}
      >
        <h2>{words.find.title}</h2>
        <Field
          label={words.find.lot}
          value={lot}
          maxLength={80}
          spellCheck={false}
          onChange={(event) => setLot(event.target.value)}
          side={
            <Button type="submit" disabled={lot.trim() === ''}>
              {words.find.go}
            </Button>
          }
        />
        {isLost && <Note kind="no">{words.lost}</Note>}
        {found && (
          <Note kind={found.deliveries.length === 0 ? 'plain' : 'watch'} role="status">
            {words.find.found(found.deliveries.length, found.lot)}
          </Note>
        )}
        {found && <Rows of={found.deliveries} timeZone={shown.timeZone} />}
      </form>
      <h2 id="came-before">{words.history}</h2>
      {came.length === 0 && <p>{words.none}</p>}
      <div className={styles.foods}>
        {came.map(({ ingredient, name, deliveries }) => (
          <section key={ingredient} aria-label={name}>
            <h3>{name}</h3>
            <Rows of={deliveries} timeZone={shown.timeZone} />
          </section>
        ))}
      </div>
    </section>
  )
}
