package app.coilside.blocks

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.Canvas
import android.graphics.Paint
import android.graphics.Path
import android.view.View
import app.coilside.view.dp

/** How much of a waiting time is over. The digits above it say the same. */
@SuppressLint("ViewConstructor")
class BarView(context: Context, color: Int) : View(context) {
    private val paint = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        this.color = color
        strokeWidth = dp(2).toFloat()
    }
    private val box = Path()

    /** 0…1. */
    var share = 0f
        set(value) {
            field = value
            invalidate()
        }

    init {
        importantForAccessibility = IMPORTANT_FOR_ACCESSIBILITY_NO
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) =
        setMeasuredDimension(MeasureSpec.getSize(widthSpec), dp(HIGH_DP))

    override fun onDraw(canvas: Canvas) {
        val edge = paint.strokeWidth / 2
        val round = height / 2f
        box.reset()
        box.addRoundRect(edge, edge, width - edge, height - edge, round, round, Path.Direction.CW)
        canvas.save()
        canvas.clipPath(box)
        paint.style = Paint.Style.FILL
        val from = if (layoutDirection == LAYOUT_DIRECTION_RTL) width * (1 - share) else 0f
        canvas.drawRect(from, 0f, from + width * share, height.toFloat(), paint)
        canvas.restore()
        paint.style = Paint.Style.STROKE
        canvas.drawPath(box, paint)
    }

    private companion object {
        const val HIGH_DP = 18
    }
}
