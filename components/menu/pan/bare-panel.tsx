import { useEffect, useRef, useState } from 'react'
import { About, Helped } from '#components/menu/fields/help.tsx'
import { heldOf } from '#components/menu/line/drawn.ts'
import { followSteps, heldIn } from '#components/menu/line/held-in.ts'
import styles from '#components/menu/menu.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Field } from '#components/ui/field.tsx'
import { Panel } from '#components/ui/panel.tsx'
import { keyOf, rowOf, rowsOf, textIn } from '#lib/editor/draft.ts'
import { newId } from '#lib/editor/ids.ts'
import type { Step } from '#lib/editor/step.ts'
import {
  PAN_DEPTHS_IN,
  PAN_SIZES,
  type PanDepthIn,
  type PanSize,
  panCapacity,
} from '#lib/measure/pans.ts'
import { sizesThatFit } from '#lib/measure/well-layout.ts'

const USUAL: readonly PanSize[] = ['third', 'sixth', 'ninth', 'half', 'quarter', 'full']

/** A pan that is put into a well: its size of those that fit, and what goes into it. */
export function BarePanel({
  well,
  onDone,
}: {
  readonly well: string
  readonly onDone: () => void
}) {
  const words = useMenuWords()
  const { draft, take, go } = useMenu()
  const input = useRef<HTMLDivElement>(null)
  const standing = rowsOf(draft, 'pan').flatMap(({ row }) =>
    textIn(row, 'well') === well ? [textIn(row, 'size') as PanSize] : [],
  )
  const fitting = sizesThatFit(standing)
  const [size, setSize] = useState<PanSize | null>(
    USUAL.find((one) => fitting.includes(one)) ?? null,
  )
  const [depth, setDepth] = useState<PanDepthIn>(4)
  const [name, setName] = useState('')
  useEffect(() => input.current?.querySelector('input')?.focus(), [])
  const onLine = new Set(rowsOf(draft, 'pan').map(({ row }) => textIn(row, 'component')))
  const waiting = rowsOf(draft, 'component').filter(({ id }) => !onLine.has(id))
  const number = 1 + rowsOf(draft, 'well').findIndex(({ id }) => id === well)
  const held = textIn(rowOf(draft, 'well', well), 'held')

  const put = (known: string | null) => {
    const said = name.trim()
    if (size === null || (known === null && said === '')) return
    const same = rowsOf(draft, 'component').find(
      ({ row }) => textIn(row, 'name').toLowerCase() === said.toLowerCase(),
    )
    const component = known ?? same?.id ?? newId(draft, 'component', said)
    const pan = newId(draft, 'pan', `pan ${component}`)
    const steps: readonly Step[] = [
      ...(known !== null || same
        ? []
        : [
            {
              do: 'put',
              entity: 'component',
              id: component,
              fields: {
                name: said,
                held: heldIn(heldOf(held), ''),
                portion: { tool: 'scoop', number: 16, level: 1 },
              },
            } as const,
          ]),
      { do: 'put', entity: 'pan', id: pan, fields: { well, component, size, depthIn: depth } },
      ...followSteps(draft, component, heldOf(held)),
    ]
    take(...steps)
    onDone()
    go('line', keyOf('pan', pan))
  }
  const title = words.line.putIn(number)
  return (
    <Panel
      className={styles.panel ?? ''}
      title={title}
      label={title}
      back={words.screen.close}
      onBack={onDone}
    >
      <Helped>
        <form
          className={styles.form}
          onSubmit={(event) => {
            event.preventDefault()
            put(null)
          }}
        >
          <div className={styles.pair}>
            <About of="size">
              <Choice
                legend={words.pan.panSize}
                ways={PAN_SIZES.map((id) => ({
                  id,
                  label: words.line.size[id],
                  off: !fitting.includes(id),
                  ...(fitting.includes(id) ? {} : { more: words.line.tooLarge }),
                }))}
                chosen={size}
                onChoose={setSize}
              />
            </About>
            <About of="depth">
              <Choice
                legend={words.line.deep}
                ways={PAN_DEPTHS_IN.map((id) => ({
                  id: String(id),
                  label: words.pan.depth(id),
                  off: size !== null && panCapacity(size, id) === null,
                }))}
                chosen={String(depth)}
                onChoose={(id) => setDepth(PAN_DEPTHS_IN.find((one) => String(one) === id) ?? 4)}
              />
            </About>
          </div>
          <div ref={input}>
            <About of="whatGoesIn">
              <Field
                label={words.line.whatGoesIn}
                aria-description={words.help.whatGoesIn}
                maxLength={60}
                value={name}
                onChange={({ target }) => setName(target.value)}
              />
            </About>
          </div>
          {waiting.length > 0 && (
            <fieldset className={styles.chips}>
              <legend>{words.line.orOneOf}</legend>
              {waiting.map(({ id, row }) => (
                <button key={id} type="button" onClick={() => put(id)}>
                  {textIn(row, 'name') || id}
                </button>
              ))}
            </fieldset>
          )}
          <div className={styles.acts}>
            <Button
              kind="main"
              type="submit"
              lacks={
                size === null
                  ? words.line.noRoomAtAll
                  : name.trim() === ''
                    ? words.line.lacksName
                    : null
              }
            >
              {words.line.putItIn}
            </Button>
          </div>
        </form>
      </Helped>
    </Panel>
  )
}
