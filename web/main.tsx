import '@fontsource-variable/ysabeau-office/wght.css'
import '@fontsource-variable/ysabeau-office/wght-italic.css'
import './css/layers.css'
import './css/tokens.css'
import './css/base.css'
import './css/parts.css'
import './css/page.css'
import './css/questions.css'
import './css/map.css'
import './map/scheme/scheme.css'
import './map/staircase.css'
import './map/wide/wide.css'
import { render } from 'preact'
import { Page } from './page.tsx'
import { watchPrinting } from './print-pack.ts'
import { watchWanted } from './state/goals.ts'
import { begin, watchRecords } from './state/opening.ts'
import { watchQuestions } from './state/questions.ts'
import { watchSaving } from './state/saving.ts'

const root = document.getElementById('page')
if (root === null) throw new Error('the page has no place to stand')
render(<Page />, root)
watchQuestions()
watchWanted()
watchSaving()
watchRecords()
watchPrinting()
void begin()
