import { render } from 'preact'
import { App } from './app.tsx'
import './fonts.css'
import './style.css'

const page = document.getElementById('page')
if (page !== null) {
  page.replaceChildren()
  render(<App />, page)
}
