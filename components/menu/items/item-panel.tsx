import { useState } from 'react'
import { About, Helped } from '#components/menu/fields/help.tsx'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import { FoodOfItem } from '#components/menu/items/item-food.tsx'
import {
  choicesOf,
  type ItemFields,
  withBase,
  withHeart,
  withRequired,
  withUsual,
} from '#components/menu/items/item-now.ts'
import styles from '#components/menu/menu.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Panel } from '#components/ui/panel.tsx'
import { isRecord, type Row, recordsIn, rowOf, rowsOf, textIn } from '#lib/editor/draft.ts'

interface Chip {
  readonly id: string
  readonly label: string
  readonly isOn: boolean
  readonly onTap: () => void
}

function Chips({ legend, chips }: { readonly legend: string; readonly chips: readonly Chip[] }) {
  return (
    <fieldset className={styles.chips}>
      <legend>{legend}</legend>
      {chips.map(({ id, label, isOn, onTap }) => (
        <button key={id} type="button" aria-pressed={isOn} onClick={onTap}>
          {label}
        </button>
      ))}
    </fieldset>
  )
}

/** One item: its name, its price, what it is named for, and what it comes in. */
export function ItemPanel({
  id,
  row,
  onNext,
}: {
  readonly id: string
  readonly row: Row
  readonly onNext: () => void
}) {
  const words = useMenuWords()
  const { draft, take, go } = useMenu()
  const [isSure, setSure] = useState(false)
  const put = (fields: ItemFields) => take({ do: 'put', entity: 'item', id, fields })
  const nameOf = (component: string) =>
    textIn(rowOf(draft, 'component', component), 'name') || words.line.noName
  const parts = recordsIn(row, 'parts')
  const taken = parts.map((part) => textIn(part, 'component'))
  const inIt = parts.filter((part) => part.usual === 'in').map((part) => textIn(part, 'component'))
  const choices = choicesOf(row)
  const onLine = new Set(rowsOf(draft, 'pan').map(({ row: pan }) => textIn(pan, 'component')))
  const free = rowsOf(draft, 'component')
    .map((one) => one.id)
    .filter((component) => onLine.has(component) && !taken.includes(component))
  const name = textIn(row, 'name')
  const title = name === '' ? words.item.noName : name
  return (
    <Panel
      className={styles.panel ?? ''}
      title={title}
      label={title}
      beside={<FoodOfItem item={id} />}
      back={words.screen.close}
      onBack={() => go('items')}
    >
      <Helped
        acts={
          <>
            <Button
              kind="no"
              onClick={() => {
                if (!isSure) return setSure(true)
                take({ do: 'remove', entity: 'item', id })
                go('items')
              }}
            >
              {isSure ? words.item.takeOutSure : words.item.takeOut}
            </Button>
            <Button kind="main" onClick={onNext}>
              {words.item.next}
            </Button>
            <Button onClick={() => go('touch')}>{words.item.toTouch}</Button>
          </>
        }
      >
        <div className={styles.pair}>
          <TypedField
            entity="item"
            id={id}
            field="name"
            label={words.item.name}
            help="itemName"
            onAnswer={(value) =>
              take({
                do: 'rename',
                entity: 'item',
                id,
                name: typeof value === 'string' ? value : '',
              })
            }
          />
          <TypedField
            entity="item"
            id={id}
            field="priceCents"
            as="money"
            label={words.item.price}
            help="price"
          />
        </div>
        {parts.length === 0 && choices.length === 0 && <p>{words.item.nothing}</p>}
        <div className={styles.pair}>
          {inIt.length > 0 && (
            <About of="heart">
              <Chips
                legend={words.item.heart}
                chips={inIt.map((component) => ({
                  id: component,
                  label: nameOf(component),
                  isOn: row.heart === component,
                  onTap: () => put(withHeart(row, component)),
                }))}
              />
            </About>
          )}
          {inIt.length > 1 && (
            <About of="required">
              <Chips
                legend={words.item.required}
                chips={inIt
                  .filter((component) => component !== row.heart)
                  .map((component) => ({
                    id: component,
                    label: nameOf(component),
                    isOn: parts.some(
                      (part) => part.component === component && part.required === true,
                    ),
                    onTap: () => put(withRequired(row, component)),
                  }))}
              />
            </About>
          )}
          {(free.length > 0 || choices.length > 0) && (
            <About of="base">
              <Chips
                legend={words.item.base}
                chips={[...new Set([...choices, ...free])].map((component) => ({
                  id: component,
                  label: nameOf(component),
                  isOn: choices.includes(component),
                  onTap: () => put(withBase(row, component)),
                }))}
              />
            </About>
          )}
          {choices.length > 1 && (
            <About of="base">
              <Chips
                legend={words.item.usualBase}
                chips={choices.map((component) => ({
                  id: component,
                  label: nameOf(component),
                  isOn: isRecord(row.base) && row.base.usual === component,
                  onTap: () => put(withUsual(row, component)),
                }))}
              />
            </About>
          )}
        </div>
      </Helped>
    </Panel>
  )
}
