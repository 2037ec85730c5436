package app.coilside.frame

import android.annotation.SuppressLint
import android.view.View
import android.widget.LinearLayout
import app.coilside.R
import app.coilside.blocks.Ruled
import app.coilside.blocks.Ui
import app.coilside.blocks.button
import app.coilside.view.Capped
import app.coilside.view.Column
import app.coilside.view.Flow
import app.coilside.view.MATCH
import app.coilside.view.MEASURE_DP
import app.coilside.view.PressButton
import app.coilside.view.WRAP
import app.coilside.view.below
import app.coilside.view.beside
import app.coilside.view.column
import app.coilside.view.dp
import app.coilside.view.isLow
import app.coilside.view.isTight
import app.coilside.view.pad
import app.coilside.view.row
import coilside.Screen

/** The buttons in the lower part, the first one large, and the key to the menu. */
@SuppressLint("ViewConstructor")
class FootView(private val ui: Ui, private val openMenu: () -> Unit) : LinearLayout(ui.context) {
    private var shown: Any? = null
    private val held = context.column()

    /** Whether there is anything to press. */
    var hasWays = false
        private set

    init {
        orientation = VERTICAL
        setBackgroundColor(ui.palette.paper)
        addView(View(context).apply { background = Ruled(ui.palette.line, dp(1)) }, context.below().apply { height = dp(1) })
        val column = Column(context, dp(MEASURE_DP))
        column.addView(held, android.widget.FrameLayout.LayoutParams(MATCH, WRAP))
        val capped = Capped(context, MOST_SHARE)
        capped.addView(column, android.widget.FrameLayout.LayoutParams(MATCH, WRAP))
        addView(capped, context.below())
        held.pad(16, if (context.isLow()) 6 else 12)
        setTag(R.id.role, "foot")
    }

    fun show(screen: Screen) {
        val wanted = listOf(screen.foot, screen.menu.isEmpty(), ui.words.say("menu"))
        if (wanted == shown) return
        shown = wanted
        held.removeAllViews()
        hasWays = screen.foot.isNotEmpty() || screen.menu.isNotEmpty()
        if (context.isTight()) tight(screen) else high(screen)
    }

    /** The first button and the menu's key in one row; the other buttons stand at the end of the page. */
    private fun tight(screen: Screen) {
        val row = context.row()
        screen.foot.firstOrNull()?.let { row.addView(ui.button(it, main = true), context.beside().apply { height = MATCH }) }
        if (screen.menu.isNotEmpty()) {
            val words = screen.foot.isEmpty() || context.isLow()
            val key = menuKey(stacked = false, words)
            row.addView(key, context.beside(if (screen.foot.isEmpty()) 0 else GAP_DP, if (screen.foot.isEmpty()) 1f else 0f).apply { height = MATCH })
        }
        held.addView(row, context.below())
    }

    private fun high(screen: Screen) {
        val first = context.row()
        screen.foot.firstOrNull()?.let { first.addView(ui.button(it, main = true), context.beside().apply { height = MATCH }) }
        if (screen.menu.isNotEmpty()) {
            val key = menuKey(stacked = screen.foot.isNotEmpty())
            if (screen.foot.isEmpty()) first.addView(key, context.beside()) else first.addView(key, context.beside(10, weight = 0f).apply { height = MATCH })
        }
        held.addView(first, context.below())
        val others = screen.foot.drop(1)
        if (others.isEmpty()) return
        val row = Flow(context, GAP_DP, fills = true)
        for (other in others) row.addView(ui.button(other))
        held.addView(row, context.below(GAP_DP))
    }

    private fun menuKey(stacked: Boolean, words: Boolean = true): PressButton {
        val label = ui.words.say("menu")
        val key = PressButton(context, ui.palette, if (words) label else "", icon = R.drawable.glyph_menu, stacked = stacked, fire = openMenu)
        key.contentDescription = label
        key.setTag(R.id.role, "menu-key")
        return key
    }

    private companion object {
        const val GAP_DP = 10
        const val MOST_SHARE = 0.45f
    }
}
