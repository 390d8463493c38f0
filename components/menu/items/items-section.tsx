import { ItemFood } from '#components/menu/items/item-food.tsx'
import { markOf, tapped } from '#components/menu/items/item-now.ts'
import { ItemPanel } from '#components/menu/items/item-panel.tsx'
import styles from '#components/menu/items/items.module.css'
import { type DrawnPan, wellsOf } from '#components/menu/line/drawn.ts'
import { unsetIn } from '#components/menu/publish/unset.ts'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { keyOf, namedBy, type Row, rowOf, rowsOf, textIn } from '#lib/editor/draft.ts'
import { newId } from '#lib/editor/ids.ts'

/** Pans of the line with the well that each begins, so that the gaps between wells are drawn. */
const columnsOf = (wells: ReturnType<typeof wellsOf>) =>
  wells.flatMap(({ pans, held }) => pans.map((pan, at) => ({ pan, held, begins: at === 0 })))

/** The menu as rows over the line: what each item takes stands in the pans' own columns. */
export function ItemsSection() {
  const words = useMenuWords()
  const { draft, problems, missing, place, go, take } = useMenu()
  const columns = columnsOf(wellsOf(draft, unsetIn(problems, missing)))
  const items = rowsOf(draft, 'item')
  const about = place.about === null ? null : namedBy(place.about)
  const chosen = items.find(({ id }) => about?.entity === 'item' && about.id === id)
  const currency = textIn(draft.rows.house, 'currency') || null
  const line = columns.map(({ pan }) => pan.component)
  const add = () => {
    const id = newId(draft, 'item', 'item')
    take({ do: 'put', entity: 'item', id, fields: { name: '' } })
    go('items', keyOf('item', id))
  }
  const tap = ({ component }: DrawnPan) => {
    if (!chosen) return
    const hasCups = rowOf(draft, 'component', component)?.side === true
    const fields = tapped(chosen.row, component, hasCups, line)
    take({ do: 'put', entity: 'item', id: chosen.id, fields })
  }
  const price = (row: Row) =>
    typeof row.priceCents === 'number'
      ? words.sayCents(row.priceCents, currency)
      : words.item.noPrice
  return (
    <Notch about={chosen ? [chosen.id] : []} className={styles.stage ?? ''}>
      <div className={styles.over} style={{ '--pans': columns.length } as React.CSSProperties}>
        <ul className={styles.rows} aria-label={words.item.items}>
          {items.map(({ id, row }) => (
            <li
              key={id}
              className={styles.row}
              data-notch={id}
              data-chosen={chosen?.id === id || undefined}
            >
              <button
                type="button"
                aria-expanded={chosen?.id === id}
                onClick={() => go('items', chosen?.id === id ? null : keyOf('item', id))}
              >
                <b>{textIn(row, 'name') || words.item.noName}</b> <span>{price(row)}</span>
              </button>
              {columns.map(({ pan, begins }) => {
                const mark = markOf(row, pan.component)
                return (
                  <i key={pan.pan} data-mark={mark} data-begins={begins || undefined}>
                    {words.item.short[mark]}
                  </i>
                )
              })}
            </li>
          ))}
          <li className={styles.row}>
            <button type="button" data-add="" onClick={add}>
              <b>+ {words.item.add}</b>
            </button>
          </li>
        </ul>
        <div className={styles.row} data-pans="">
          <p>{chosen ? words.item.tapPans : ''}</p>
          {columns.map(({ pan, begins }) => {
            const mark = chosen ? markOf(chosen.row, pan.component) : 'not'
            return (
              <button
                key={pan.pan}
                type="button"
                data-pan={pan.pan}
                data-mark={mark}
                data-begins={begins || undefined}
                disabled={!chosen}
                aria-label={
                  chosen
                    ? words.item.pan(pan.name || words.line.noName, mark)
                    : pan.name || words.line.noName
                }
                onClick={() => tap(pan)}
              >
                {pan.lines.map((one) => (
                  <b key={one}>{one}</b>
                ))}
                {chosen && <span>{words.item.short[mark]}</span>}
              </button>
            )
          })}
        </div>
        {chosen && (
          <ItemFood
            item={chosen.id}
            columns={columns.map(({ pan, begins }) => ({ component: pan.component, begins }))}
          />
        )}
      </div>
      {chosen ? (
        <ItemPanel key={chosen.id} id={chosen.id} row={chosen.row} onNext={add} />
      ) : (
        <div className={styles.idle} data-notch-panel="">
          <p>{items.length > 0 ? words.item.tapItem : words.item.none}</p>
          {items.length > 0 && (
            <Button kind="main" onClick={() => go('touch')}>
              {words.item.toTouch}
            </Button>
          )}
        </div>
      )}
    </Notch>
  )
}
