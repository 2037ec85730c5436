package app.coilside.frame

import android.annotation.SuppressLint
import app.coilside.blocks.Ui
import app.coilside.view.below
import app.coilside.view.words
import coilside.Tone

/** Says why the place is asked for, before the system asks whether it may be read. */
@SuppressLint("ViewConstructor")
class PlaceSheet(ui: Ui, allow: () -> Unit, without: () -> Unit) : Sheet(ui, ui.words.say("place-why-title"), without) {
    init {
        content.addView(title(ui.words.say("place-why-title")), context.below())
        content.addView(context.words(ui.words.say("place-why"), ui.palette.ink), context.below(10))
        content.addView(way(ui.words.say("place-allow"), "place-allow", Tone.PRIMARY, main = true, press = allow), context.below(20))
        content.addView(way(ui.words.say("place-without"), "place-without", press = without), context.below(10))
    }
}
