package app.coilside.blocks

import android.content.Context
import android.graphics.Bitmap
import android.widget.EditText
import app.coilside.session.Fields
import app.coilside.session.Words
import app.coilside.view.Palette
import coilside.Action
import coilside.Block

/** What blocks need from around them. */
interface Ui {
    val context: Context
    val palette: Palette
    val words: Words
    val fields: Fields

    /** Wall time, UTC milliseconds. */
    val nowMs: Long

    /** The language of the screen, a BCP 47 tag. */
    val language: String

    /** What is said below a waiting time that runs. */
    val alarm: AlarmLine?

    /** Sends what a press carries, after what is half typed. */
    fun press(action: Action)

    /** Gives the picture of a photograph, at once or later; none where there is no preview. */
    fun preview(digest: String, show: (Bitmap?) -> Unit)

    /** Follows a link. */
    fun follow(link: Block.Link)

    /** Fills a field from a code in a picture; none where the field takes no code. */
    fun codeReaderOf(field: String): (() -> Unit)?

    /** How reading a code went; none where there is nothing to say. */
    val codeWords: String?

    /** A field for numbers came into use, or none is any more. */
    fun numberKeysFor(input: EditText?)
}

/** Words about the alarm, and a way to make it better where there is one. */
class AlarmLine(val text: String, val allowLabel: String?, val allow: (() -> Unit)?)
