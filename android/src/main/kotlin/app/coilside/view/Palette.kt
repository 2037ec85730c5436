package app.coilside.view

import android.content.Context
import android.provider.Settings
import android.util.TypedValue
import app.coilside.R
import coilside.Tone

/** The colours of a theme by what they are for. */
class Palette(private val context: Context) {
    private val value = TypedValue()

    val ground = of(R.attr.ground)
    val paper = of(R.attr.paper)
    val sunk = of(R.attr.sunk)
    val ink = of(R.attr.ink)
    val soft = of(R.attr.soft)
    val line = of(R.attr.line)
    val edge = of(R.attr.edge)
    val lead = of(R.attr.lead)
    val onLead = of(R.attr.on_lead)
    val leadWash = of(R.attr.lead_wash)
    val top = of(R.attr.top)
    val onTop = of(R.attr.on_top)
    val softOnTop = of(R.attr.soft_on_top)
    val warnOnTop = of(R.attr.warn_on_top)
    val tooth = of(R.attr.tooth)
    val toothRest = of(R.attr.tooth_rest)
    val good = of(R.attr.good)
    val goodWash = of(R.attr.good_wash)
    val attention = of(R.attr.attention)
    val attentionWash = of(R.attr.attention_wash)
    val attentionEdge = of(R.attr.attention_edge)
    val danger = of(R.attr.danger)
    val dangerWash = of(R.attr.danger_wash)
    val dangerEdge = of(R.attr.danger_edge)
    val onDanger = of(R.attr.on_danger)
    val dwell = of(R.attr.dwell)
    val dwellReady = of(R.attr.dwell_ready)
    val dwellOver = of(R.attr.dwell_over)
    val onDwell = of(R.attr.on_dwell)
    val focus = of(R.attr.focus)
    val bars = intArrayOf(of(R.attr.bar_a), of(R.attr.bar_b), of(R.attr.bar_c), of(R.attr.bar_d))
    val shade = of(R.attr.shade)

    /** The colour of words in a tone, on paper and on the ground. */
    fun words(tone: Tone): Int = when (tone) {
        Tone.QUIET -> soft
        Tone.GOOD -> good
        Tone.ATTENTION -> attention
        Tone.DANGER -> danger
        Tone.PLAIN, Tone.PRIMARY -> ink
    }

    private fun of(attribute: Int): Int {
        context.theme.resolveAttribute(attribute, value, true)
        return value.data
    }

    companion object {
        /** Whether the person asked the phone for text of more contrast. */
        fun wantsHighContrast(context: Context): Boolean =
            Settings.Secure.getInt(context.contentResolver, "high_text_contrast_enabled", 0) == 1
    }
}
