package app.coilside.frame

import android.annotation.SuppressLint
import app.coilside.R
import app.coilside.blocks.Ui
import app.coilside.view.Flow
import app.coilside.view.PressButton
import app.coilside.view.below
import coilside.Action
import coilside.Screen

/** Ways to other screens. */
@SuppressLint("ViewConstructor")
class MenuSheet(ui: Ui, private val close: () -> Unit) : Sheet(ui, ui.words.say("menu"), close) {
    private var shown: Any? = null

    fun show(screen: Screen) {
        val wanted = screen.menu to screen.place
        if (wanted == shown) return
        shown = wanted
        content.removeAllViews()
        val ways = Flow(context, GAP_DP, fills = true, leastDp = WAY_DP)
        ways.setTag(R.id.role, "menu")
        for (button in screen.menu) {
            val here = (button.press as? Action.Go)?.to == screen.place
            val way = PressButton(context, ui.palette, button.label, button.tone, here = here) {
                close()
                ui.press(button.press)
            }
            way.setTag(R.id.press, button.press)
            way.isSelected = here
            ways.addView(way)
        }
        content.addView(title(ui.words.say("menu")), context.below())
        content.addView(ways, context.below(12))
        content.addView(way(ui.words.say("close"), "menu-close", icon = R.drawable.glyph_close, press = close), context.below(GAP_DP))
    }

    private companion object {
        const val GAP_DP = 10
        const val WAY_DP = 148
    }
}
