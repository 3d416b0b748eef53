import { render } from 'preact'
import { App } from './app.tsx'
import { dressPage } from './fonts.ts'
import './style.css'

const page = document.getElementById('page')
if (page !== null)
  dressPage().then(() => {
    page.replaceChildren()
    render(<App />, page)
  })
