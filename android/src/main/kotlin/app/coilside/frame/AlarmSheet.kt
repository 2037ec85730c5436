package app.coilside.frame

import android.annotation.SuppressLint
import android.graphics.Color
import android.os.Build
import android.view.Gravity
import android.view.View
import android.widget.FrameLayout
import app.coilside.R
import app.coilside.blocks.Ui
import app.coilside.effects.Alarms
import app.coilside.view.Capped
import app.coilside.view.MATCH
import app.coilside.view.PressButton
import app.coilside.view.WRAP
import app.coilside.view.Weight
import app.coilside.view.column
import app.coilside.view.glyph
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.surface
import app.coilside.view.words
import app.coilside.view.below

/** An alarm that rings: over the whole screen, read from two metres. */
@SuppressLint("ViewConstructor")
class AlarmSheet(ui: Ui, alarms: Alarms, text: String) : FrameLayout(ui.context) {
    init {
        setBackgroundColor(ui.palette.dwellOver)
        isClickable = true
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) accessibilityPaneTitle = text
        val content = context.column().apply { gravity = Gravity.CENTER_HORIZONTAL }
        content.pad(24, 32)
        content.addView(context.glyph(R.drawable.glyph_bell, Color.WHITE, BELL_DP))
        val said = context.words(text, Color.WHITE, TEXT_SP, Weight.BOLD).heading()
        said.textAlignment = View.TEXT_ALIGNMENT_CENTER
        said.accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE
        content.addView(said, context.below(20))
        val words = ui.words.say("alarm-stop")
        val label = if (words == "alarm-stop") context.getString(R.string.alarm_stop) else words
        val stop = PressButton(context, ui.palette, label, main = true) { alarms.stop() }
        stop.background = context.surface(Color.WHITE, Color.WHITE, 2)
        stop.setTextColor(ui.palette.dwellOver)
        stop.setTag(R.id.role, "alarm-stop")
        content.addView(stop, context.below(36))
        val scroll = Capped(context, 1f)
        scroll.addView(content, LayoutParams(MATCH, WRAP))
        addView(scroll, LayoutParams(MATCH, WRAP, Gravity.CENTER))
    }

    private companion object {
        const val BELL_DP = 120
        const val TEXT_SP = 40f
    }
}
