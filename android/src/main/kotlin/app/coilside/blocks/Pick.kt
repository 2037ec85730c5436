package app.coilside.blocks

import android.annotation.SuppressLint
import android.content.Context
import android.view.Gravity
import android.view.accessibility.AccessibilityNodeInfo
import android.widget.ImageView
import android.widget.LinearLayout
import app.coilside.R
import app.coilside.view.Palette
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.beside
import app.coilside.view.dp
import app.coilside.view.glyphDrawable
import app.coilside.view.pad
import app.coilside.view.pressable
import app.coilside.view.surface
import app.coilside.view.word
import app.coilside.view.words

/** A row with a box or a dot in front of its words, to be pressed as a whole. */
@SuppressLint("ViewConstructor")
class Pick(context: Context, private val palette: Palette, private val oneOf: Boolean) : LinearLayout(context) {
    private val box = ImageView(context).apply { setPadding(dp(4), dp(4), dp(4), dp(4)) }
    private val label = context.words("", palette.ink, Type.BODY, Weight.MEDIUM)
    private var on = false

    init {
        gravity = Gravity.CENTER_VERTICAL
        minimumHeight = dp(HIGH_DP)
        pad(12, 10)
        isFocusable = true
        isClickable = true
        box.importantForAccessibility = IMPORTANT_FOR_ACCESSIBILITY_NO
        label.importantForAccessibility = IMPORTANT_FOR_ACCESSIBILITY_NO
        addView(box, LayoutParams(dp(BOX_DP), dp(BOX_DP)))
        addView(label, context.beside(14))
    }

    fun show(text: String, isOn: Boolean) {
        on = isOn
        val color = if (oneOf) palette.lead else palette.good
        val wash = if (oneOf) palette.leadWash else palette.goodWash
        val inside = if (oneOf) palette.onLead else palette.paper
        label.word(text, palette.ink, Type.BODY, if (isOn) Weight.BOLD else Weight.MEDIUM)
        contentDescription = text
        val surface = context.surface(if (isOn) wash else palette.paper, if (isOn) color else palette.edge, 2)
        background = context.pressable(surface, palette)
        val round = if (oneOf) BOX_DP / 2f else BOX_ROUND_DP
        box.background = context.surface(if (isOn) color else palette.paper, if (isOn) color else palette.edge, 3, round)
        box.setImageDrawable(if (isOn) context.glyphDrawable(R.drawable.glyph_done, inside) else null)
    }

    override fun getAccessibilityClassName(): CharSequence =
        if (oneOf) "android.widget.RadioButton" else "android.widget.CheckBox"

    override fun onInitializeAccessibilityNodeInfo(info: AccessibilityNodeInfo) {
        super.onInitializeAccessibilityNodeInfo(info)
        info.isCheckable = true
        @Suppress("DEPRECATION")
        info.isChecked = on
    }

    private companion object {
        const val HIGH_DP = 60
        const val BOX_DP = 34
        const val BOX_ROUND_DP = 9f
    }
}
