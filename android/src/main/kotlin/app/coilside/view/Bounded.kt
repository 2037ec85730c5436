package app.coilside.view

import android.content.Context
import android.view.View
import android.widget.FrameLayout
import android.widget.ScrollView
import kotlin.math.min

/** Holds one child and lets it grow no wider than is read with ease, in the middle. */
class Column(context: Context, private val widestPx: Int) : FrameLayout(context) {
    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val spare = (MeasureSpec.getSize(widthSpec) - widestPx).coerceAtLeast(0)
        setPadding(spare / 2, 0, spare - spare / 2, 0)
        super.onMeasure(widthSpec, heightSpec)
    }
}

/** Moves the sides of what a view holds in, so that it grows no wider than is read with ease; called when the view is measured. */
fun View.boundSides(widthSpec: Int, sideDp: Number) {
    val side = dp(sideDp) + (View.MeasureSpec.getSize(widthSpec) - dp(MEASURE_DP)).coerceAtLeast(0) / 2
    if (paddingStart != side || paddingEnd != side) setPaddingRelative(side, paddingTop, side, paddingBottom)
}

/** Scrolls what is higher than a share of the window. */
class Capped(context: Context, private val share: Float) : ScrollView(context) {
    init {
        isFillViewport = false
        overScrollMode = View.OVER_SCROLL_IF_CONTENT_SCROLLS
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val most = (resources.displayMetrics.heightPixels * share).toInt()
        val given = if (MeasureSpec.getMode(heightSpec) == MeasureSpec.UNSPECIFIED) most else MeasureSpec.getSize(heightSpec)
        super.onMeasure(widthSpec, MeasureSpec.makeMeasureSpec(min(most, given), MeasureSpec.AT_MOST))
    }
}
