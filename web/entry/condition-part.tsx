import { numberText } from '../../core/quantity/print.ts'
import { write, writing } from './draft.ts'
import { wrongIn } from './drafting.ts'
import { EquipmentField } from './equipment-field.tsx'
import { knownOptions } from './known-options.ts'
import { Choice, Field, TextField } from './parts.tsx'
import { readingState } from './reading.ts'
import { tasksTyped } from './typed-tasks.ts'

/** Times, conditions, dangers, source. */
export function ConditionPart() {
  const it = writing.value
  const read = readingState.value.reading?.transformation
  const tasks = tasksTyped(it.tasks, it.holdPoint)
  const told = tasks.tasks.length > 0
  return (
    <section aria-label="Conditions and source" class="entry-conditions">
      <TextField
        label="Takes in all, h"
        help={
          told
            ? 'Left open, the tasks above say it.'
            : read?.elapsedHours === undefined
              ? 'From the first weighing to the dry product, drying included.'
              : `The text names ${numberText(read.elapsedHours, 3)} h; with work-up and drying it is more.`
        }
        value={it.hours}
        placeholder={told ? String(tasks.elapsedHours) : read?.elapsedHours === undefined ? undefined : numberText(read.elapsedHours, 3)}
        field="hours"
        wrong={wrongIn('hours')}
        onText={hours => write({ hours })}
      />
      <TextField
        label="Of that hands-on, h"
        help="When somebody must stand there. May stay open."
        value={it.handsOn}
        placeholder={told ? String(tasks.handsOnHours) : undefined}
        field="handsOn"
        wrong={wrongIn('handsOn')}
        onText={handsOn => write({ handsOn })}
      />
      <TextField
        label="Temperature, °C"
        help="One figure or a range: 60-65. May stay open."
        value={it.temperature}
        placeholder={read?.temperatureC === undefined ? undefined : [...new Set(read.temperatureC)].join(' to ')}
        field="temperature"
        wrong={wrongIn('temperature')}
        onText={temperature => write({ temperature })}
      />
      <Choice
        label="The product may wait"
        help="Before the next step spoils it. It decides which evenings follow."
        value={it.holdPoint}
        options={[
          ['', 'not said'],
          ['never', 'not at all'],
          ['hours', 'some hours'],
          ['overnight', 'overnight'],
          ['weeks', 'for weeks'],
        ]}
        onChoose={holdPoint => write({ holdPoint })}
      />
      <Choice
        label="Vessel"
        help="What it is done in."
        value={it.vessel}
        options={[
          ['', 'not said (flask)'],
          ['flask', 'flask'],
          ['beaker', 'beaker'],
          ['pot', 'pot'],
          ['tube', 'tube'],
          ['mortar', 'mortar'],
          ['tray', 'tray'],
          ['other', 'other'],
        ]}
        onChoose={vessel => write({ vessel })}
      />
      <Choice
        label="Gets warm by itself"
        help="A strong one is filled to half and scaled with care."
        field="exotherm"
        value={it.exotherm}
        options={[
          ['', 'say which'],
          ['none', 'no'],
          ['mild', 'a little'],
          ['strong', 'strongly'],
        ]}
        onChoose={exotherm => write({ exotherm })}
      />
      <Choice
        label="Needs a hood"
        help="Vapours, gas or dust that nobody may breathe."
        field="hood"
        value={it.hood}
        options={[
          ['', 'say which'],
          ['yes', 'yes'],
          ['no', 'no'],
        ]}
        onChoose={hood => write({ hood })}
      />
      <Choice
        label="Under"
        help="Inert gas where air or damp spoils it."
        value={it.atmosphere}
        options={[
          ['air', 'air'],
          ['inert', 'inert gas'],
        ]}
        onChoose={atmosphere => write({ atmosphere })}
      />
      <TextField
        label="Name of the step"
        help="As it will stand in routes and on the bench sheet."
        field="name"
        wrong={wrongIn('name')}
        value={it.name}
        placeholder={read?.name}
        onText={name => write({ name })}
      />
      <Choice
        label="The figures are"
        help="Three things are never mixed up: seen in a source, remembered, of your own bench."
        field="known"
        value={it.known}
        options={knownOptions}
        onChoose={known => write({ known })}
      />
      {it.known === 'own' && (
        <Field
          label="Run on"
          help="The day of the run, not of this entry. Left open, the record says when it was entered."
          field="ranOn"
          wrong={wrongIn('ranOn')}
        >
          {ids => (
            <input {...ids} class="blank" type="date" value={it.ranOn} onInput={event => write({ ranOn: event.currentTarget.value })} />
          )}
        </Field>
      )}
      <TextField
        label="Source"
        help="Book and page, paper, address; for your own bench the notebook page."
        class="wide"
        field="source"
        value={it.source}
        onText={source => write({ source })}
      />
      <EquipmentField />
      <Field
        label="Dangers of this step, a line each"
        help="In your own words: what is peculiar to it. Labels of the materials come by themselves."
        class="wide"
      >
        {ids => (
          <textarea {...ids} class="blank" rows={2} value={it.dangers} onInput={event => write({ dangers: event.currentTarget.value })} />
        )}
      </Field>
    </section>
  )
}
