import { useState } from 'react'
import { CheckField, PickField } from '#components/menu/fields/pick-field.tsx'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import styles from '#components/menu/pan/again.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { rowOf, rowsOf, textIn, textsIn } from '#lib/editor/draft.ts'
import { newId } from '#lib/editor/ids.ts'
import type { Step } from '#lib/editor/step.ts'
import type { PanDepthIn, PanSize } from '#lib/measure/pans.ts'

const KEPT = ['hot', 'cold', 'boxed'] as const

/** What a guest meets of it, the back-up pans behind it, and the pan itself. */
export function GuestLeaf({
  pan,
  component,
  onMove,
}: {
  readonly pan: string
  readonly component: string
  readonly onMove: () => void
}) {
  const words = useMenuWords()
  const { draft, take, go } = useMenu()
  const [isSure, setSure] = useState(false)
  const of = { entity: 'component' as const, id: component }
  const row = rowOf(draft, 'component', component)
  const panRow = rowOf(draft, 'pan', pan)
  const short = textsIn(row, 'short')
  const backups = rowsOf(draft, 'backup').filter(
    (one) => textIn(one.row, 'component') === component,
  )
  const held = textIn(row, 'held')
  const putBackup = () => {
    const id = newId(draft, 'backup', `back-up ${component}`)
    const { size = 'third', depthIn = 4 } = panRow ?? {}
    take({
      do: 'put',
      entity: 'backup',
      id,
      fields: {
        component,
        size,
        depthIn,
        kept: held === 'hot' || held === 'cold' ? held : 'boxed',
      },
    })
  }
  const takeOut = () => {
    if (!isSure) return setSure(true)
    const others = rowsOf(draft, 'pan').filter(
      (one) => one.id !== pan && textIn(one.row, 'component') === component,
    )
    const isUsed = rowsOf(draft, 'item').some(({ row: item }) =>
      JSON.stringify(item).includes(`"${component}"`),
    )
    const steps: readonly Step[] = [
      { do: 'remove', entity: 'pan', id: pan },
      ...(others.length === 0 && !isUsed
        ? [
            ...backups.map(({ id }) => ({ do: 'remove', entity: 'backup', id }) as const),
            { do: 'remove', entity: 'component', id: component } as const,
          ]
        : []),
    ]
    take(...steps)
    go('line')
  }
  const sayShort = (line: 0 | 1, text: string) => {
    const lines = [line === 0 ? text : (short[0] ?? ''), line === 1 ? text : (short[1] ?? '')]
    take({
      do: 'put',
      ...of,
      fields: { short: lines[1] === '' ? [lines[0] ?? ''] : lines },
    })
  }
  return (
    <div className={styles.leaf}>
      <section className={styles.part}>
        <CheckField {...of} field="side" label={words.pan.side} help="side" />
        <div className={styles.fields}>
          <TypedField {...of} field="extraCents" as="money" label={words.pan.extra} help="extra" />
          <TypedField
            {...of}
            field="costCents"
            as="money"
            label={words.pan.cost}
            help="cost"
            isNullWhenEmpty
          />
          {([0, 1] as const).map((line) => (
            <TypedField
              key={line}
              {...of}
              field={`short.${line}`}
              label={words.pan.short(line === 0 ? 1 : 2)}
              help="short"
              shown={short[line] ?? ''}
              onAnswer={(value) => sayShort(line, typeof value === 'string' ? value : '')}
            />
          ))}
          <TypedField {...of} field="mark" label={words.pan.mark} help="mark" />
        </div>
        <CheckField {...of} field="plural" label={words.pan.plural} help="plural" isAbsentWhenNot />
      </section>
      <section className={styles.part}>
        <h3>{words.pan.backups}</h3>
        {backups.map(({ id, row: backup }) => (
          <div key={id} className={styles.backup}>
            <b>
              {words.pan.backup(textIn(backup, 'size') as PanSize, backup.depthIn as PanDepthIn)}
            </b>
            <Button kind="quiet" onClick={() => take({ do: 'remove', entity: 'backup', id })}>
              {words.pan.takeBackup}
            </Button>
            <CheckField
              entity="backup"
              id={id}
              field="protected"
              label={words.pan.protected}
              help="backup"
            />
            <PickField
              entity="backup"
              id={id}
              field="kept"
              label={words.pan.kept}
              help="backup"
              ways={KEPT.map((one) => ({ id: one, label: words.pan.keptAs[one] }))}
            />
          </div>
        ))}
        <Button kind="quiet" onClick={putBackup}>
          {words.pan.addBackup}
        </Button>
        <div className={styles.fields}>
          <TypedField
            entity="pan"
            id={pan}
            field="tareMg"
            as="ounces"
            label={words.pan.tare}
            help="tare"
            isNullWhenEmpty
          />
          <TypedField
            entity="pan"
            id={pan}
            field="capacityFlOz"
            as="number"
            label={words.pan.capacity}
            help="capacity"
            isNullWhenEmpty
          />
        </div>
        <div className={styles.fields}>
          <Button kind="quiet" onClick={onMove}>
            {words.pan.move}
          </Button>
          <Button kind="no" onClick={takeOut}>
            {isSure ? words.pan.takePanSure : words.pan.takePan}
          </Button>
        </div>
      </section>
    </div>
  )
}
