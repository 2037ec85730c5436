package app.coilside.frame

import android.annotation.SuppressLint
import android.os.Build
import android.view.Gravity
import android.view.View
import android.widget.FrameLayout
import android.widget.LinearLayout
import android.widget.TextView
import app.coilside.R
import app.coilside.blocks.Ui
import app.coilside.view.Capped
import app.coilside.view.MATCH
import app.coilside.view.MEASURE_DP
import app.coilside.view.PressButton
import app.coilside.view.Type
import app.coilside.view.WRAP
import app.coilside.view.Weight
import app.coilside.view.column
import app.coilside.view.dp
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.words
import coilside.Tone

/** Something that lies above a screen until it is answered. [dismiss]: what leaving it by the back key means. */
@SuppressLint("ViewConstructor")
abstract class Sheet(protected val ui: Ui, paneTitle: String, val dismiss: () -> Unit) : FrameLayout(ui.context) {
    /** What stands in the sheet. */
    protected val content: LinearLayout = context.column()
    private val panel = Capped(context, MOST_SHARE)

    init {
        setBackgroundColor(ui.palette.shade)
        isClickable = true
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) panel.accessibilityPaneTitle = paneTitle
        content.pad(16, 20)
        panel.addView(content, LayoutParams(MATCH, WRAP))
        panel.background = android.graphics.drawable.GradientDrawable().apply {
            setColor(ui.palette.paper)
            val round = dp(ROUND_DP).toFloat()
            cornerRadii = floatArrayOf(round, round, round, round, 0f, 0f, 0f, 0f)
        }
        panel.isClickable = true
        addView(panel, LayoutParams(MATCH, WRAP, Gravity.BOTTOM or Gravity.CENTER_HORIZONTAL))
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val wide = MeasureSpec.getSize(widthSpec)
        panel.layoutParams.width = minOf(wide, dp(MEASURE_DP))
        super.onMeasure(widthSpec, heightSpec)
    }

    /** Keeps clear of the system's bars and the keyboard, pixels. */
    fun inset(bottom: Int) {
        content.setPadding(content.paddingLeft, content.paddingTop, content.paddingRight, dp(20) + bottom)
    }

    protected fun title(text: String): TextView = context.words(text, ui.palette.ink, Type.HEADING, Weight.BOLD).heading()

    /** A way on. [role] names it. */
    protected fun way(label: String, role: String, tone: Tone = Tone.PLAIN, icon: Int? = null, main: Boolean = false, press: () -> Unit): View =
        PressButton(context, ui.palette, label, tone, main, icon, fire = press).apply { setTag(R.id.role, role) }

    private companion object {
        const val MOST_SHARE = 0.92f
        const val ROUND_DP = 22
    }
}
