package app.coilside.view

import android.content.Context
import android.view.View
import android.view.ViewGroup
import android.widget.LinearLayout
import kotlin.math.roundToInt

/** What a finger in a wet glove hits, dp. */
const val TARGET_DP = 56

/** The one thing to do next, dp. */
const val TARGET_MAIN_DP = 72

/** Between blocks, dp. */
const val GAP_DP = 16

/** Wider than this nothing is read with ease, dp. */
const val MEASURE_DP = 680

const val MATCH = ViewGroup.LayoutParams.MATCH_PARENT
const val WRAP = ViewGroup.LayoutParams.WRAP_CONTENT

/** Density-independent pixels as pixels. */
fun Context.dp(dp: Number): Int = (dp.toFloat() * resources.displayMetrics.density).roundToInt()

fun View.dp(dp: Number): Int = context.dp(dp)

/** The same padding at start and end, and above and below, dp. */
fun View.pad(sideDp: Number, upDp: Number, downDp: Number = upDp) =
    setPaddingRelative(dp(sideDp), dp(upDp), dp(sideDp), dp(downDp))

/** Layout in a column: the whole width, [aboveDp] below what stands before. */
fun Context.below(aboveDp: Number = 0): LinearLayout.LayoutParams =
    LinearLayout.LayoutParams(MATCH, WRAP).apply { topMargin = dp(aboveDp) }

/** Layout in a row: what is left of the width, [afterDp] behind what stands before. */
fun Context.beside(afterDp: Number = 0, weight: Float = 1f): LinearLayout.LayoutParams =
    LinearLayout.LayoutParams(if (weight > 0) 0 else WRAP, WRAP, weight).apply { marginStart = dp(afterDp) }

/** A column. */
fun Context.column(): LinearLayout = LinearLayout(this).apply { orientation = LinearLayout.VERTICAL }

/** A row. */
fun Context.row(): LinearLayout = LinearLayout(this).apply {
    orientation = LinearLayout.HORIZONTAL
    isBaselineAligned = false
}

/** Whether the window is as low as that of a phone on its side. */
fun Context.isLow(): Boolean = resources.configuration.screenHeightDp < LOW_DP

/** Whether so little fits beside the foot that only its first button may stay. */
fun Context.isTight(): Boolean = with(resources.configuration) { screenHeightDp / fontScale < TIGHT_DP }

private const val LOW_DP = 480
private const val TIGHT_DP = 480
