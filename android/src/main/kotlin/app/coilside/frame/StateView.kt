package app.coilside.frame

import android.annotation.SuppressLint
import android.content.Context
import android.view.Gravity
import android.view.View
import android.widget.LinearLayout
import app.coilside.R
import app.coilside.session.Session
import app.coilside.session.Standing
import app.coilside.view.Palette
import app.coilside.view.PressButton
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.glyph
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.words
import coilside.Tone

/** The states without a screen: the core is being opened, or cannot be. Their words cannot come from the core. */
@SuppressLint("ViewConstructor")
class StateView(context: Context, private val palette: Palette, private val session: Session) : LinearLayout(context) {
    init {
        orientation = VERTICAL
        gravity = Gravity.CENTER_VERTICAL or Gravity.START
        setBackgroundColor(palette.ground)
        pad(24, 24)
    }

    fun show() {
        removeAllViews()
        val shut = session.standing == Standing.SHUT
        val trouble = session.shutBecause
        addView(context.glyph(if (shut) R.drawable.glyph_attention else R.drawable.glyph_running, palette.lead, MARK_DP))
        val title = context.words(context.getString(if (shut) R.string.shut else R.string.opening), palette.ink, TITLE_SP, Weight.BOLD)
        title.heading().accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_POLITE
        addView(title, context.below(18))
        val text = when {
            !shut -> R.string.opening_text
            trouble?.isFull == true -> R.string.shut_full
            else -> R.string.shut_text
        }
        addView(context.words(context.getString(text), palette.ink, Type.STRONG), context.below(12))
        if (!shut) return
        trouble?.takeIf { !it.isFull }?.let { addView(context.words(it.detail, palette.soft), context.below(12)) }
        val again = PressButton(context, palette, context.getString(R.string.try_again), Tone.PRIMARY, main = true) { session.open() }
        again.setTag(R.id.role, "open-again")
        addView(again, context.below(24))
    }

    private companion object {
        const val MARK_DP = 72
        const val TITLE_SP = 32f
    }
}
