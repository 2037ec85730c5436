package app.coilside.blocks

import app.coilside.R
import app.coilside.view.HoldWords
import app.coilside.view.PressButton
import coilside.Button

/** Draws a button of the core. [main]: the one thing to do next. [here]: it leads to where one is. */
fun Ui.button(button: Button, main: Boolean = false, icon: Int? = null, here: Boolean = false): PressButton {
    val hold = if (button.hold) HoldWords(words.say("hold"), words.say("press-again")) else null
    return PressButton(context, palette, button.label, button.tone, main, icon, here = here, holdWords = hold) { press(button.press) }
        .apply { setTag(R.id.press, button.press) }
}
