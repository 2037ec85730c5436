package app.coilside.support

import android.os.Bundle
import android.os.CancellationSignal
import android.os.ParcelFileDescriptor
import android.print.PageRange
import android.print.PrintAttributes
import android.print.PrintDocumentAdapter
import android.print.PrintJob
import android.print.PrintManager
import android.webkit.WebView
import org.robolectric.annotation.Implementation
import org.robolectric.annotation.Implements
import org.robolectric.annotation.RealObject
import org.robolectric.shadows.ShadowWebView

/** The document of a page, in place of the one that a phone's own WebView makes. */
class Document(val of: WebView) : PrintDocumentAdapter() {
    override fun onLayout(before: PrintAttributes?, now: PrintAttributes?, signal: CancellationSignal?, done: LayoutResultCallback?, extras: Bundle?) = Unit

    override fun onWrite(pages: Array<out PageRange>?, to: ParcelFileDescriptor?, signal: CancellationSignal?, done: WriteResultCallback?) = Unit
}

/** A WebView that gives its page to a printer. */
@Implements(WebView::class)
class Paper : ShadowWebView() {
    @RealObject
    private lateinit var page: WebView

    @Implementation
    fun createPrintDocumentAdapter(name: String): PrintDocumentAdapter = Document(page)
}

/** The system's print service, which keeps what it is given. */
@Implements(PrintManager::class)
class Printer {
    class Job(val name: String, val document: Document)

    @Implementation
    fun print(name: String, document: PrintDocumentAdapter, attributes: PrintAttributes?): PrintJob? {
        jobs += Job(name, document as Document)
        return null
    }

    companion object {
        val jobs = ArrayList<Job>()
    }
}
