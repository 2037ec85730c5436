package app.coilside.view

import android.content.Context
import android.view.View
import android.view.ViewGroup
import kotlin.math.max

/**
 * Sets its children side by side and goes on in the next row where there is no more room. With [fills] the children of a
 * row share what is left of it.
 */
class Flow(
    context: Context,
    gapDp: Number,
    private val fills: Boolean = false,
    private val leastDp: Number = 0,
    downDp: Number = gapDp,
) : ViewGroup(context) {
    private val gap = dp(gapDp)
    private val down = dp(downDp)
    private val rows = ArrayList<List<View>>()

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val wide = max(0, MeasureSpec.getSize(widthSpec) - paddingLeft - paddingRight)
        val least = dp(leastDp).coerceAtMost(wide)
        val children = (0 until childCount).map(::getChildAt).filter { it.visibility != View.GONE }
        for (child in children) {
            val free = MeasureSpec.makeMeasureSpec(0, MeasureSpec.UNSPECIFIED)
            child.measure(MeasureSpec.makeMeasureSpec(wide, MeasureSpec.AT_MOST), free)
        }
        rows.clear()
        var row = ArrayList<View>()
        var taken = 0
        for (child in children) {
            val needs = max(least, child.measuredWidth)
            if (row.isNotEmpty() && taken + gap + needs > wide) {
                rows += row
                row = ArrayList()
                taken = 0
            }
            taken += (if (row.isEmpty()) 0 else gap) + needs
            row += child
        }
        if (row.isNotEmpty()) rows += row
        if (fills) for (each in rows) fill(each, wide, least)
        val high = rows.sumOf { each -> each.maxOf { it.measuredHeight } } + down * max(0, rows.size - 1)
        val used = if (fills) wide else rows.maxOfOrNull { row -> row.sumOf { it.measuredWidth } + gap * (row.size - 1) } ?: 0
        setMeasuredDimension(
            resolveSize(used + paddingLeft + paddingRight, widthSpec),
            resolveSize(high + paddingTop + paddingBottom, heightSpec),
        )
    }

    /** Shares the rest of the row evenly, and makes all of it equally high. */
    private fun fill(row: List<View>, wide: Int, least: Int) {
        val needs = row.map { max(least, it.measuredWidth) }
        val spare = (wide - needs.sum() - gap * (row.size - 1)) / row.size
        val free = MeasureSpec.makeMeasureSpec(0, MeasureSpec.UNSPECIFIED)
        val sides = needs.map { MeasureSpec.makeMeasureSpec(it + max(0, spare), MeasureSpec.EXACTLY) }
        row.forEachIndexed { at, child -> child.measure(sides[at], free) }
        val high = MeasureSpec.makeMeasureSpec(row.maxOf { it.measuredHeight }, MeasureSpec.EXACTLY)
        row.forEachIndexed { at, child -> child.measure(sides[at], high) }
    }

    override fun onLayout(changed: Boolean, left: Int, top: Int, right: Int, bottom: Int) {
        val mirrored = layoutDirection == LAYOUT_DIRECTION_RTL
        var y = paddingTop
        for (row in rows) {
            val high = row.maxOf { it.measuredHeight }
            var x = if (mirrored) right - left - paddingRight else paddingLeft
            for (child in row) {
                val start = if (mirrored) x - child.measuredWidth else x
                child.layout(start, y, start + child.measuredWidth, y + child.measuredHeight)
                x += (child.measuredWidth + gap) * if (mirrored) -1 else 1
            }
            y += high + down
        }
    }
}
