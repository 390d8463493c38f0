import { useState } from 'react'
import { About } from '#components/menu/fields/help.tsx'
import styles from '#components/menu/house/bells.module.css'
import { CrewRows } from '#components/menu/house/crew-rows.tsx'
import menu from '#components/menu/menu.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { type Row, recordsIn, textIn } from '#lib/editor/draft.ts'

/** An id that none of a list has. */
const freeId = (stem: string, rows: readonly Row[]): string => {
  const taken = new Set(rows.map((row) => textIn(row, 'id')))
  for (let number = rows.length + 1; ; number += 1)
    if (!taken.has(`${stem}-${number}`)) return `${stem}-${number}`
}

/** Named bell schedules with their periods, and who is there in each. */
export function BellsLeaf() {
  const words = useMenuWords()
  const { draft, take } = useMenu()
  const { day } = draft.rows
  const bells = recordsIn(day, 'bells')
  const [chosen, setChosen] = useState(0)
  const bell = bells[chosen]
  const put = (next: readonly Row[]) =>
    take({ do: 'put', entity: 'day', id: 'day', fields: { bells: next } })
  const change = (fields: Row) =>
    put(bells.map((one, at) => (at === chosen ? { ...one, ...fields } : one)))
  const periods = bell ? recordsIn(bell, 'periods') : []
  const changePeriod = (at: number, fields: Row) =>
    change({ periods: periods.map((one, which) => (which === at ? { ...one, ...fields } : one)) })
  const add = () => {
    put([
      ...bells,
      {
        id: freeId('bell', bells),
        name: bells.length === 0 ? words.house.firstBell : '',
        periods: [],
      },
    ])
    setChosen(bells.length)
  }
  const takeBell = () => {
    put(bells.filter((_, at) => at !== chosen))
    setChosen(0)
  }
  return (
    <About of="bell">
      <div className={styles.bells}>
        <div className={menu.chips}>
          {bells.map((one, at) => (
            <button
              key={textIn(one, 'id')}
              type="button"
              aria-pressed={at === chosen}
              onClick={() => setChosen(at)}
            >
              {textIn(one, 'name') || '…'}
            </button>
          ))}
          <button type="button" onClick={add}>
            + {words.house.addBell}
          </button>
        </div>
        {bell && (
          <>
            <Field
              label={words.house.bellName}
              maxLength={60}
              value={textIn(bell, 'name')}
              onChange={({ target }) => change({ name: target.value })}
              side={
                <Button kind="no" onClick={takeBell}>
                  {words.house.takeBell}
                </Button>
              }
            />
            <ul className={styles.periods}>
              {periods.map((period, at) => (
                <li key={textIn(period, 'id')}>
                  <Field
                    label={words.house.period}
                    maxLength={60}
                    value={textIn(period, 'name')}
                    onChange={({ target }) => changePeriod(at, { name: target.value })}
                  />
                  {(['from', 'to'] as const).map((end) => (
                    <Field
                      key={end}
                      label={words.house[end]}
                      type="time"
                      value={textIn(period, end)}
                      onChange={({ target }) => changePeriod(at, { [end]: target.value })}
                    />
                  ))}
                  <Button
                    kind="quiet"
                    aria-label={words.house.takePeriod(textIn(period, 'name'))}
                    onClick={() => change({ periods: periods.filter((_, which) => which !== at) })}
                  >
                    ×
                  </Button>
                  <CrewRows bell={textIn(bell, 'id')} period={textIn(period, 'id')} />
                </li>
              ))}
            </ul>
            <Button
              kind="quiet"
              onClick={() =>
                change({
                  periods: [
                    ...periods,
                    {
                      id: freeId('period', periods),
                      name: String(periods.length + 1),
                      from: textIn(periods.at(-1), 'to'),
                      to: '',
                    },
                  ],
                })
              }
            >
              {words.house.addPeriod}
            </Button>
          </>
        )}
      </div>
    </About>
  )
}
