package app.coilside.view

import android.content.Context
import android.content.res.ColorStateList
import android.graphics.Color
import android.graphics.drawable.Drawable
import android.graphics.drawable.GradientDrawable
import android.graphics.drawable.LayerDrawable
import android.graphics.drawable.RippleDrawable
import android.graphics.drawable.StateListDrawable

/** Corners, dp. */
const val ROUND_DP = 14f
const val ROUND_SMALL_DP = 10f

/** A filled box with an edge. [dashed]: something is still missing in it. */
fun Context.surface(
    fill: Int,
    edge: Int = Color.TRANSPARENT,
    edgeDp: Number = 0,
    roundDp: Float = ROUND_DP,
    dashed: Boolean = false,
): GradientDrawable = GradientDrawable().apply {
    setColor(fill)
    cornerRadius = dp(roundDp).toFloat()
    val wide = dp(edgeDp)
    if (wide > 0 && dashed) setStroke(wide, edge, dp(DASH_DP).toFloat(), dp(DASH_DP).toFloat())
    if (wide > 0 && !dashed) setStroke(wide, edge)
}

/** A box that answers to a finger, and shows where the focus of keys and switches is. */
fun Context.pressable(box: Drawable, palette: Palette, roundDp: Float = ROUND_DP, touch: Int = palette.edge): Drawable {
    val ring = LayerDrawable(
        arrayOf(
            surface(Color.TRANSPARENT, palette.focus, FOCUS_DP, roundDp),
            surface(Color.TRANSPARENT, palette.ink, 2, roundDp),
        ),
    )
    val focus = StateListDrawable().apply {
        addState(intArrayOf(android.R.attr.state_focused), ring)
        addState(intArrayOf(), surface(Color.TRANSPARENT))
    }
    val faint = Color.argb(TOUCH_ALPHA, Color.red(touch), Color.green(touch), Color.blue(touch))
    val mask = surface(Color.WHITE, roundDp = roundDp)
    return RippleDrawable(ColorStateList.valueOf(faint), LayerDrawable(arrayOf(box, focus)), mask)
}

private const val DASH_DP = 6
private const val FOCUS_DP = 6
private const val TOUCH_ALPHA = 90
